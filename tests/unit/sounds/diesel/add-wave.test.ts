import { expect, test } from 'vitest';
import { addWave } from '../../../../src/lib/sounds/diesel/add-wave.js';
import { lineOf } from './steady.js';

const RATE = 16000;
const tone = (partials: number[], frequency: number, level: (sample: number) => number = () => 1) => {
  const signal = new Float32Array(RATE);
  addWave(
    signal,
    { partials, phase: (sample) => (frequency * sample) / RATE, level, highest: frequency },
    RATE
  );
  return signal;
};

test('partials come out with their amplitudes at multiples of the frequency, and nothing between', () => {
  const signal = tone([1, 0, 0.5, 0.25], 440);
  for (const [n, size] of [1, 0, 0.5, 0.25].entries())
    expect(lineOf(signal, 440 * (n + 1))).toBeCloseTo(size, 3);
  for (const between of [220, 660, 1000, 2200]) expect(lineOf(signal, between)).toBeLessThan(1e-3);
});

test('partials above 0.45 of the sample rate are left out', () => {
  const signal = tone([1, 1], 4000);
  expect(lineOf(signal, 4000)).toBeCloseTo(1, 2);
  const power = signal.reduce((sum, x) => sum + x * x, 0) / signal.length;
  expect(power).toBeCloseTo(0.5, 2);
  expect(tone([1], 7500).every((x) => x === 0)).toBe(true);
});

test('the level is followed, and it is added to what is there', () => {
  const signal = tone([1], 1000, (sample) => sample / RATE);
  const peakOf = (from: number) => Math.max(...signal.subarray(from, from + 160));
  expect(peakOf(4000)).toBeCloseTo(0.255, 1);
  expect(peakOf(12000)).toBeCloseTo(0.755, 1);
  const there = new Float32Array(64).fill(2);
  addWave(there, { partials: [1], phase: () => 0, level: () => 0, highest: 10 }, RATE);
  expect([...there]).toEqual(Array.from({ length: 64 }, () => 2));
});
