import { expect, test } from 'vitest';
import { sum } from '../../../src/lib/numeric/sum.js';

const of = (re: number[], im: number[]) => ({ re: Float64Array.from(re), im: Float64Array.from(im) });

test('adds the others to the first, in place', () => {
  const first = of([1, 2], [3, 4]);
  expect(sum([first, of([10, 20], [30, 40]), of([100, 200], [300, 400])])).toBe(first);
  expect(first).toEqual(of([111, 222], [333, 444]));
});

test('refuses sequences of different length', () => {
  expect(() => sum([of([1], [1]), of([1, 2], [1, 2])])).toThrow(
    new RangeError('summands must have the same length, got 1 and 2')
  );
});
