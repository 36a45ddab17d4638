import { complexArray, type ComplexArray } from '../../numeric/complex-array.js';
import type { Hertz } from '../../units.js';

/**
 * Second-order high-pass H = s²/(s² + s·ω0/Q + ω0²): a speaker's own response in an endless plate with f0 = fs
 * and Q = Qts, or in a closed box with fc and Qtc (R. H. Small, J. Audio Eng. Soc. 20 (1972) 383 and 798).
 *
 * @param frequency any length, Hz
 * @param f0 above 0 Hz
 * @param q above 0
 * @throws RangeError outside those ranges
 */
export function secondOrderHighPass(frequency: Float64Array, f0: Hertz, q: number): ComplexArray {
  if (!(f0 > 0 && Number.isFinite(f0))) throw new RangeError(`the resonance must be above 0 Hz, got ${f0}`);
  if (!(q > 0 && Number.isFinite(q))) throw new RangeError(`the quality factor must be above 0, got ${q}`);
  const h = complexArray(frequency.length);
  for (let i = 0; i < frequency.length; i++) {
    const x = frequency[i] / f0;
    const square = x * x;
    const re = 1 - square;
    const im = x / q;
    const scale = -square / (re * re + im * im);
    h.re[i] = re * scale;
    h.im[i] = -im * scale;
  }
  return h;
}
