import type { Seconds } from '../../units.js';
import type { Span } from '../blocks/span.js';

/**
 * White noise that has nothing to do with that of another lateness: the span's first stream read so much later, and
 * taken round at its ends. Lateness must differ by more than what is to be independent lasts.
 */
export function lateNoise(span: Span, late: Seconds): Float32Array {
  const white = span.noise(0);
  const shift = Math.round(late * span.sampleRate) % white.length;
  const turned = new Float32Array(white.length);
  turned.set(white.subarray(white.length - shift));
  turned.set(white.subarray(0, white.length - shift), shift);
  return turned;
}
