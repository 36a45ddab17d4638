import { raisedCosine } from '../numeric/raised-cosine.js';
import type { Hertz, Seconds } from '../units.js';

/**
 * The impulse response that turns a step into a raised cosine of that duration, `delay` later. Its taps are not
 * negative and add up to 1: whatever goes in comes out smooth, within the same bounds, and arrives exactly.
 */
export function raisedCosineStep(duration: Seconds, delay: Seconds, sampleRate: Hertz): Float32Array {
  const late = Math.round(delay * sampleRate);
  const length = Math.max(1, Math.round(duration * sampleRate));
  const taps = new Float32Array(late + length);
  for (let i = 0; i < length; i++) taps[late + i] = raisedCosine((i + 1) / length) - raisedCosine(i / length);
  return taps;
}
