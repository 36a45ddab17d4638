import { expect, test } from 'vitest';
import { medianMs } from '../../../src/cli/median-ms.mjs';
import { runCommand } from '../../helpers/run-command.js';

test('everything whose time is taken runs', async () => {
  const { code, stdout, stderr } = await runCommand('speed', ['--once']);
  expect([code, stderr]).toEqual([0, '']);
  const [timed, waves, growth] = stdout.trimEnd().split('\n\n');
  const rows = timed.split('\n');
  expect(rows.length).toBeGreaterThan(5);
  expect(rows.shift()).toMatch(/^memory for a run past of 30 s, at its most +\d+\.\d MB$/);
  for (const row of rows) expect(row).toMatch(/^\S.* +\d+\.\d+ ms +\d+\.\d ×( +\d+ times real time)?$/);
  for (const shell of ['full, central', 'full, 30 mm off', 'draft, central', 'draft, 30 mm off'])
    expect(waves).toMatch(new RegExp(`^Node, ${shell}( +\\d+){2}( +\\d+\\.\\d{3}){5}$`, 'm'));
  expect(waves).toContain('\nChromium and the plain program in Python are left out of --once.');
  expect(growth).toMatch(/^Over all: matrices ∝ N\^-?\d\.\d\d, one frequency ∝ N\^-?\d\.\d\d\.$/m);
}, 120_000);

test('once is once; else the operation is warmed up and repeated', () => {
  let calls = 0;
  medianMs(() => calls++, { once: true });
  expect(calls).toBe(1);
  medianMs(() => calls++, { budgetMs: 5 });
  expect(calls).toBeGreaterThan(6);
});

test('a slower operation takes longer', () => {
  const work = (n: number) => () => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += Math.sqrt(i);
    return sum;
  };
  const short = medianMs(work(2e4), { budgetMs: 20 });
  expect(medianMs(work(2e6), { budgetMs: 20 })).toBeGreaterThan(5 * short);
});
