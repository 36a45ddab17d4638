import type { ComplexArray } from './complex-array.js';

/** 20·log10|H| of every element; −Infinity where H is zero (or below 1e-154, whose square is). */
export function levelDb(h: ComplexArray): Float64Array<ArrayBuffer> {
  const level = new Float64Array(h.re.length);
  for (let k = 0; k < level.length; k++) level[k] = 10 * Math.log10(h.re[k] * h.re[k] + h.im[k] * h.im[k]);
  return level;
}
