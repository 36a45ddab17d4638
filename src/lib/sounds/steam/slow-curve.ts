import type { Span } from '../blocks/span.js';

/** Worked out every so many samples (0.7 ms at 48 kHz), straight between. */
const STEP = 32;

/**
 * A curve that is slow beside the sound, such as a gain that follows the speed, at every sample of a span.
 *
 * @param at its value at a sample, asked for from 0 up to and including the span's length
 */
export function slowCurve({ length }: Pick<Span, 'length'>, at: (sample: number) => number): Float32Array {
  const curve = new Float32Array(length);
  let here = at(0);
  for (let from = 0; from < length; from += STEP) {
    const to = Math.min(length, from + STEP);
    const there = at(to);
    const rise = (there - here) / (to - from);
    for (let i = from; i < to; i++) curve[i] = here + rise * (i - from);
    here = there;
  }
  return curve;
}
