import type { Seconds } from '../../units.js';
import type { Span } from '../blocks/span.js';

/**
 * White noise that has nothing to do with that of another lateness: the span's first stream read so much later, and
 * taken round at its ends. Lateness must differ by more than what is to be independent lasts.
 */
export function lateNoise(span: Span, late: Seconds): Float32Array {
  return turnedRound(span.noise(0), Math.round(late * span.sampleRate), span.spare.take());
}

/** The same samples so much later; what leaves at the end comes in again at the beginning. */
export function turnedRound(
  samples: Float32Array,
  by: number,
  turned: Float32Array = new Float32Array(samples.length)
): Float32Array {
  const shift = by % samples.length;
  turned.set(samples.subarray(samples.length - shift));
  turned.set(samples.subarray(0, samples.length - shift), shift);
  return turned;
}
