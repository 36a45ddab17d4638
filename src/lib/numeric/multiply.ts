import type { ComplexArray } from './complex-array.js';

/** Multiplies `a` by `b`, element by element, in place, and returns `a`; both have the same length. */
export function multiply(a: ComplexArray, b: ComplexArray): ComplexArray {
  if (a.re.length !== b.re.length)
    throw new RangeError(`factors must have the same length, got ${a.re.length} and ${b.re.length}`);
  for (let i = 0; i < a.re.length; i++) {
    const re = a.re[i] * b.re[i] - a.im[i] * b.im[i];
    a.im[i] = a.re[i] * b.im[i] + a.im[i] * b.re[i];
    a.re[i] = re;
  }
  return a;
}
