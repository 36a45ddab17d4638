import { expect, test } from 'vitest';
import { Bench } from '../../../src/lib/bench/bench.svelte.js';
import { withAmplifier, withDrive, withLift, withNoise } from '../../../src/lib/bench/circumstances.js';

test('drive, amplifier, lift and noise are told in the file, and taken back', () => {
  const bench = new Bench();
  const { file } = bench;
  expect(withDrive(file, { volts: 2 }).drive).toEqual({ volts: 2 });
  expect(withAmplifier(file, { leastLoad: 4, power: 3 }).amplifier).toEqual({ leastLoad: 4, power: 3 });
  const lifted = withLift(file, { gainDb: 6, below: 300 });
  expect(lifted.lift).toEqual({ gainDb: 6, below: 300 });
  expect(withLift(lifted, { gainDb: 0, below: 300 })).toEqual(file);
  const noisy = withNoise(file, { place: 'exhibitionHall', levelDb: 70, heard: false });
  expect(noisy.noise).toEqual({ place: 'exhibitionHall', levelDb: 70, heard: false });
  expect(withNoise(noisy, null)).toEqual(file);
});

test('what cannot be is refused in one sentence, and the bench is as it was', () => {
  const bench = new Bench();
  const before = bench.file;
  expect(bench.revise((file) => withDrive(file, { volts: -1 }))).toMatch(/-1|−1/);
  expect(bench.revise((file) => withLift(file, { gainDb: 19, below: 300 }))).toBe(
    'the lift must be within 0 … 18 dB, got 19'
  );
  expect(bench.file).toBe(before);
});

test('no noise where there was none makes no step to undo', () => {
  const bench = new Bench();
  expect(bench.revise((file) => withNoise(file, null))).toBeNull();
  expect(bench.canUndo).toBe(false);
});
