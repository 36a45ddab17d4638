import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test, vi } from 'vitest';
import { waysToInstall } from '../../../src/cli/ensure-chromium.mjs';
import { ownProjects, pageWorkers } from '../../../src/cli/test-stages.mjs';
import { runCommand } from '../../helpers/run-command.js';
import { temporaryFolder } from '../../helpers/temporary-folder.js';

// Each command is a process of its own; a busy machine takes its time.
vi.setConfig({ testTimeout: 30_000 });

test('every tsconfig below src and tests is checked on its own', () => {
  const folder = temporaryFolder();
  mkdirSync(path.join(folder, 'src/lib/audio'), { recursive: true });
  mkdirSync(path.join(folder, 'tests/browser'), { recursive: true });
  for (const name of [
    'tsconfig.json',
    'src/lib/audio/tsconfig.worklet.json',
    'tests/browser/tsconfig.json',
    'src/tsconfig.txt'
  ])
    writeFileSync(path.join(folder, name), '{}');
  expect(ownProjects(folder)).toEqual([
    path.join('src/lib/audio/tsconfig.worklet.json'),
    path.join('tests/browser/tsconfig.json')
  ]);
});

test('as many pages are tested at a time as there are cores, four at most', () => {
  expect([1, 2, 3, 4, 64].map((cores) => pageWorkers(cores))).toEqual([1, 2, 3, 4, 4]);
});

test.each([
  [{ isRoot: true, isCi: true, hasApt: true }, false, ['apt', 'playwright']],
  [{ isRoot: true, isCi: false, hasApt: true }, false, ['playwright']],
  [{ isRoot: true, isCi: false, hasApt: true }, true, ['playwright', 'apt']],
  [{ isRoot: false, isCi: true, hasApt: true }, true, ['playwright']],
  [{ isRoot: true, isCi: true, hasApt: false }, true, ['playwright']]
] as const)('a browser for %j (asked: %s) comes from %j', (machine, mayUseApt, ways) => {
  expect(waysToInstall(machine, mayUseApt)).toEqual(ways);
});

test('an unknown stage is refused with the list of those there are', async () => {
  const { code, stdout, stderr } = await runCommand('test', ['--only', 'unit,speling']);
  expect([code, stdout]).toEqual([2, '']);
  expect(stderr).toBe('there is no stage "speling": types, lint, format, unit, sound, page\n');
});
