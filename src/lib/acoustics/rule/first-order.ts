import { complexArray, type ComplexArray } from '../../numeric/complex-array.js';
import type { Hertz } from '../../units.js';

/**
 * First-order section H = (jf + zero)/(jf + pole): a shelf from zero/pole at f = 0 to 1 far above both.
 *
 * @param frequency any length, Hz
 * @param zero at least 0 Hz
 * @param pole above 0 Hz
 * @throws RangeError outside those ranges
 */
export function firstOrderSection(frequency: Float64Array, zero: Hertz, pole: Hertz): ComplexArray {
  if (!(zero >= 0 && Number.isFinite(zero)))
    throw new RangeError(`the zero must be at least 0 Hz, got ${zero}`);
  if (!(pole > 0 && Number.isFinite(pole)))
    throw new RangeError(`the corner frequency must be above 0 Hz, got ${pole}`);
  const h = complexArray(frequency.length);
  for (let i = 0; i < frequency.length; i++) {
    const f = frequency[i];
    const scale = 1 / (f * f + pole * pole);
    h.re[i] = (f * f + zero * pole) * scale;
    h.im[i] = f * (pole - zero) * scale;
  }
  return h;
}

/**
 * First-order high-pass H = (jf/fc)/(1 + jf/fc). With the corner fc = c/(2π·d) its low-frequency limit is
 * the dipole's H = j·k·d.
 *
 * @param frequency any length, Hz
 * @param corner above 0 Hz
 * @throws RangeError for another corner
 */
export function firstOrderHighPass(frequency: Float64Array, corner: Hertz): ComplexArray {
  return firstOrderSection(frequency, 0, corner);
}
