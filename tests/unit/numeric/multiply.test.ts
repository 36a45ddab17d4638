import { expect, it } from 'vitest';
import { multiply } from '../../../src/lib/numeric/multiply.js';

it('multiplies in place: (1 + 2j)·(3 − j) = 5 + 5j, j·j = −1', () => {
  const a = { re: Float64Array.of(1, 0), im: Float64Array.of(2, 1) };
  const b = { re: Float64Array.of(3, 0), im: Float64Array.of(-1, 1) };
  expect(multiply(a, b)).toBe(a);
  expect([...a.re, ...a.im]).toEqual([5, -1, 5, 0]);
  expect([...b.re, ...b.im]).toEqual([3, 0, -1, 1]);
  expect(() => multiply(a, { re: new Float64Array(3), im: new Float64Array(3) })).toThrow(
    'factors must have the same length, got 2 and 3'
  );
});
