import { expect, test } from 'vitest';
import { leadingSpan, loopSpan } from '../../../../src/lib/sounds/blocks/span.js';
import { slowNoise } from '../../../../src/lib/sounds/diesel/slow-noise.js';

const RATE = 8000;
const loop = loopSpan(5 * RATE, RATE, 3);
const samples = (voice: number, span = loop, from = 0, to = span.length) => {
  const slow = slowNoise(span);
  return Array.from({ length: to - from }, (_, i) => slow(voice, from + i));
};
const rms = (values: number[]) => Math.sqrt(values.reduce((sum, x) => sum + x * x, 0) / values.length);

test('it wanders about as far as RMS 1, whatever the sample rate', () => {
  for (const rate of [8000, 48000, 96000]) {
    const span = loopSpan(5 * rate, rate, 3);
    const slow = slowNoise(span);
    const all = [0, 1, 2, 3, 4, 5].flatMap((voice) =>
      Array.from({ length: 500 }, (_, i) => slow(voice, (i / 500) * span.length))
    );
    expect(rms(all)).toBeGreaterThan(0.6);
    expect(rms(all)).toBeLessThan(1.6);
  }
});

test('it is slow, and round a loop it comes back to where it began', () => {
  const all = samples(1);
  const step = Math.max(...all.slice(1).map((x, i) => Math.abs(x - all[i])));
  expect(step).toBeLessThan(0.02);
  expect(Math.abs(all[0] - all[all.length - 1])).toBeLessThan(0.02);
  const slow = slowNoise(loop);
  expect(slow(1, -100)).toBeCloseTo(slow(1, loop.length - 100), 12);
});

test('voices wander by themselves', () => {
  const [a, b] = [samples(0), samples(1)];
  const together = a.reduce((sum, x, i) => sum + x * b[i], 0) / a.length;
  expect(Math.abs(together) / (rms(a) * rms(b))).toBeLessThan(0.5);
});

test('what leads into a loop comes to where the loop ends', () => {
  const lead = leadingSpan(3 * RATE, loop);
  const [led, round] = [samples(2, lead, 2 * RATE), samples(2, loop, 4 * RATE)];
  const apart = Math.max(...led.map((x, i) => Math.abs(x - round[i])));
  expect(apart).toBeLessThan(0.05);
});
