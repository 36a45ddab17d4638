import type { ComplexArray } from './complex-array.js';

/** Adds the others to the first, element by element, in place, and returns it; all have the same length. */
export function sum([first, ...others]: readonly ComplexArray[]): ComplexArray {
  for (const { re, im } of others) {
    if (re.length !== first.re.length)
      throw new RangeError(`summands must have the same length, got ${first.re.length} and ${re.length}`);
    for (let i = 0; i < re.length; i++) {
      first.re[i] += re[i];
      first.im[i] += im[i];
    }
  }
  return first;
}
