import { expect, test } from 'vitest';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { Bench } from '../../../src/lib/bench/bench.svelte.js';
import { withSpeaker } from '../../../src/lib/bench/speakers.js';
import { WaveAnswers } from '../../../src/lib/evaluation/wave-answers.svelte.js';
import type { Wish } from '../../../src/lib/evaluation/wave-jobs.js';
import { demoBench } from '../../../src/lib/file/demo-bench.js';
import { hearWaves } from '../../../src/lib/waves/curve/heard-waves.js';
import { solutionKey, solveMount } from '../../../src/lib/waves/wave-solution.js';
import { AIR } from '../../helpers/demo-installations.js';
import { poolAtHand } from '../../helpers/pool-at-hand.js';

test('a solution does not depend on the motor, the depth or the body: a changed one asks for no other', () => {
  const { oval } = SPEAKERS;
  const mount = { kind: 'free' } as const;
  const key = solutionKey({ speaker: oval, mount, turn: 0 }, AIR);
  for (const value of Object.keys(oval.motor))
    expect(
      solutionKey({ speaker: { ...oval, motor: { ...oval.motor, [value]: 1e-3 } }, mount, turn: 0 }, AIR)
    ).toBe(key);
  const other = { ...oval, depth: 0.02, bodyVolume: 1e-6, name: 'other' };
  expect(solutionKey({ speaker: other, mount, turn: 0 }, AIR)).toBe(key);
  const narrow = { ...oval, cone: { ...oval.cone, length: 0.03 } };
  expect(solutionKey({ speaker: narrow, mount, turn: 0 }, AIR)).not.toBe(key);
});

test('a motor value that is changed gives its curve at once, from the solution there is, and no worker is asked', async () => {
  const { pool, open, asked } = poolAtHand();
  const waves = new WaveAnswers(pool);
  const demo = demoBench();
  const bench = new Bench({ ...demo, setups: [demo.setups[0]] }, waves);
  const wishes = (): Wish[] => [
    { place: 0, installation: bench.stands[0].installation, air: bench.file.air, listener: bench.listener }
  ];
  waves.want(wishes(), true);
  const heard = hearWaves(
    solveMount(bench.stands[0].installation, AIR, { accuracy: 'draft' }),
    bench.listener
  );
  for (const { answer } of [...open]) await answer([heard]);
  const [before, questions] = [bench.stands[0].computed!, asked.length];
  expect(before.answer.model).toBe('wave');

  const heavy = { ...SPEAKERS.oval, motor: { ...SPEAKERS.oval.motor, mms: 4 * SPEAKERS.oval.motor.mms } };
  expect(bench.revise((file) => withSpeaker(file, 'oval', heavy))).toBe(null);
  const after = bench.stands[0].computed!;
  expect(after.answer.model).toBe('wave');
  expect(after.responseDb).not.toEqual(before.responseDb);
  waves.want(wishes(), true);
  expect([open, asked.length]).toEqual([[], questions]);
});
