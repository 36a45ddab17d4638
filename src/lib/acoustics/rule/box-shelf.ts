import type { ComplexArray } from '../../numeric/complex-array.js';
import type { Hertz, Metres, MetresPerSecond } from '../../units.js';
import { firstOrderSection } from './first-order.js';

/**
 * The middle f_m = c/(3.85·√(L·W)) of the step between all-round and front-only radiation of a box whose front is
 * L × W: a fit to the wave solution, 9 %.
 */
export function boxShelfFrequency(length: Metres, width: Metres, c: MetresPerSecond): Hertz {
  return c / (3.85 * Math.sqrt(length * width));
}

/**
 * The shelf H = (jf + f_m/√2)/(jf + f_m·√2): −6.02 dB against the endless plate at low frequency, where a small
 * box radiates all round, 0 dB at high frequency, where it radiates from its front only. The wave solution
 * stands above it by about 3 dB with an oblong front, by up to 4.3 dB with a square one.
 *
 * @param frequency any length, Hz
 * @param middle f_m, above 0 Hz
 */
export function boxShelf(frequency: Float64Array, middle: Hertz): ComplexArray {
  return firstOrderSection(frequency, middle / Math.SQRT2, middle * Math.SQRT2);
}
