import { expect, test } from 'vitest';
import { strain } from '../../../src/lib/listening/strain.js';
import { close } from '../../helpers/close.js';

const RATE = 8000;

test('of a sine: peak 1, mean square ½, in every second', () => {
  const sine = Float32Array.from({ length: 3 * RATE }, (_, i) => Math.sin((2 * Math.PI * 100 * i) / RATE));
  const { peak, meanSquare, loudestSecond } = strain(sine, RATE);
  close(peak, 1, { abs: 1e-6, because: 'a sample lies on its top' });
  close(meanSquare, 0.5, { abs: 1e-6, because: 'whole periods' });
  close(loudestSecond, 0.5, { abs: 1e-6, because: 'every second is alike' });
});

test('the loudest second may lie across the seam', () => {
  const loop = new Float32Array(4 * RATE);
  loop.fill(-2, 0, RATE / 2);
  loop.fill(2, 3.5 * RATE);
  const { peak, meanSquare, loudestSecond } = strain(loop, RATE);
  expect(peak).toBe(2);
  close(meanSquare, 1, { abs: 1e-9, because: 'a quarter of it at 4' });
  close(loudestSecond, 4, { abs: 1e-6, because: 'half a second before the seam and half behind' });
});

test('a loop shorter than a second is its own loudest second', () => {
  const loop = Float32Array.of(1, 0, 0, 0);
  expect(strain(loop, RATE)).toEqual({ peak: 1, meanSquare: 0.25, loudestSecond: 0.25 });
  expect(() => strain(new Float32Array(), RATE)).toThrow('a loop must have at least 1 sample, got 0');
});
