import { expect, test } from 'vitest';
import { loopSpan } from '../../../../src/lib/sounds/blocks/span.js';
import { pipe } from '../../../../src/lib/sounds/diesel/pipe.js';

const RATE = 8000;

test('a push comes back reversed after every round trip, weaker and duller each time', () => {
  const signal = new Float32Array(600);
  signal[10] = 1;
  pipe(signal, 100 / RATE, 0.5, 1000, { ...loopSpan(600, RATE, 1), cyclic: false });
  const sum = (from: number) => signal.subarray(from, from + 60).reduce((a, b) => a + b, 0);
  expect(signal[10]).toBe(1);
  expect(signal.subarray(11, 109).every((x) => x === 0)).toBe(true);
  expect(sum(108)).toBeCloseTo(-0.5, 4);
  expect(sum(208)).toBeCloseTo(0.25, 4);
  expect(Math.max(...signal.subarray(208, 260))).toBeLessThan(0.2);
});

test('between samples the delay is divided between its neighbours', () => {
  const signal = new Float32Array(60);
  signal[0] = 1;
  pipe(signal, 20.25 / RATE, 0.5, 1e6, { ...loopSpan(60, RATE, 1), cyclic: false });
  expect(signal[20]).toBeCloseTo(-0.375, 6);
  expect(signal[21]).toBeCloseTo(-0.125, 6);
});

test('in a loop it is what a long run of the same loop comes to', () => {
  const span = loopSpan(1000, RATE, 2);
  const once = span.noise(0).slice();
  pipe(once, 83.4 / RATE, 0.6, 900, span);
  const long = new Float32Array(9000);
  for (let i = 0; i < 9000; i++) long[i] = span.noise(0)[i % 1000];
  pipe(long, 83.4 / RATE, 0.6, 900, { ...span, cyclic: false });
  const apart = once.reduce((most, x, i) => Math.max(most, Math.abs(x - long[8000 + i])), 0);
  expect(apart).toBeLessThan(1e-5);
});

test('a pipe shorter than a sample does nothing', () => {
  const signal = Float32Array.of(1, 2, 3);
  pipe(signal, 0.5 / RATE, 0.5, 900, loopSpan(3, RATE, 1));
  expect([...signal]).toEqual([1, 2, 3]);
});
