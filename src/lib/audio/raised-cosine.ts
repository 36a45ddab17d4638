import type { Hertz, Seconds } from '../units.js';

/** s(u) = (1 − cos πu)/2: from 0 at u = 0 to 1 at u = 1, level at both ends. */
export function raisedCosine(u: number): number {
  return (1 - Math.cos(Math.PI * Math.min(1, Math.max(0, u)))) / 2;
}

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
