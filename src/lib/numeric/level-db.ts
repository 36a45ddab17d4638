import type { Decibels } from '../units.js';
import type { ComplexArray } from './complex-array.js';

/** 20·log10|H| of every element; −Infinity where H is zero. */
export function levelDb(h: ComplexArray): Float64Array<ArrayBuffer> {
  return Float64Array.from(h.re, (re, k): Decibels => 20 * Math.log10(Math.hypot(re, h.im[k])));
}
