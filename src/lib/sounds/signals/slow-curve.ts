import type { Seconds } from '../../units.js';
import type { Span } from '../blocks/span.js';

/** Spacing at which a slow curve is worked out. */
const SPACING: Seconds = 0.0005;

/**
 * A curve that changes slowly, at every sample: worked out every half millisecond, straight in between.
 *
 * @param at its value at a time in seconds after the first sample
 */
export function slowCurve(
  { length, sampleRate }: Pick<Span, 'length' | 'sampleRate'>,
  at: (t: Seconds) => number
): Float32Array {
  const curve = new Float32Array(length);
  const stretch = Math.max(1, Math.round(SPACING * sampleRate));
  let before = at(0);
  for (let first = 0; first < length; first += stretch) {
    const after = at((first + stretch) / sampleRate);
    const end = Math.min(stretch, length - first);
    for (let i = 0; i < end; i++) curve[first + i] = before + ((after - before) * i) / stretch;
    before = after;
  }
  return curve;
}
