import type { Seconds } from '../../units.js';
import type { Span } from './span.js';

/** Spacing at which a slow curve is worked out. */
const SPACING: Seconds = 0.0005;

/**
 * A curve that is slow beside the sound, such as a gain that follows the speed, at every sample of a span: worked out every
 * half millisecond, straight in between.
 *
 * @param at its value at a sample, and at a time in seconds after the first one; asked for up to and including the end
 */
export function slowCurve(
  { length, sampleRate }: Pick<Span, 'length' | 'sampleRate'>,
  at: (sample: number, time: Seconds) => number
): Float32Array {
  const curve = new Float32Array(length);
  const stretch = Math.max(1, Math.round(SPACING * sampleRate));
  let here = at(0, 0);
  for (let from = 0; from < length; from += stretch) {
    const to = Math.min(length, from + stretch);
    const there = at(to, to / sampleRate);
    const rise = (there - here) / (to - from);
    for (let i = from; i < to; i++) curve[i] = here + rise * (i - from);
    here = there;
  }
  return curve;
}
