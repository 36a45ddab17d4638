import type { ComplexArray } from './complex-array.js';

/** A complex sequence times a real factor, as a new one. */
export function scaled({ re, im }: ComplexArray, factor: number): ComplexArray {
  return { re: re.map((value) => value * factor), im: im.map((value) => value * factor) };
}
