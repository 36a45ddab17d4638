import { RealFft } from '../numeric/fft.js';
import type { Hertz } from '../units.js';

/** Samples of one window. */
export const WINDOW = 8192;

export interface PowerSpectrum {
  /** Mean square a bin, one-sided, WINDOW/2 + 1 bins; the sum of all is the mean square of the loop. */
  power: Float64Array;
  /** Bin k is at k·binWidth. */
  binWidth: Hertz;
}

/**
 * Average power spectrum of a sound that repeats for ever (P. D. Welch, IEEE Trans. Audio Electroacoust. 15 (1967)
 * 70): Hann windows of 8192 samples that overlap by half or a little more, evenly over the loop and round its seam.
 *
 * @throws RangeError for an empty loop
 */
export function powerSpectrum(samples: Float32Array, sampleRate: Hertz): PowerSpectrum {
  const length = samples.length;
  if (length === 0) throw new RangeError('a loop must have at least 1 sample, got 0');
  const fft = new RealFft(WINDOW);
  const hann = Float64Array.from({ length: WINDOW }, (_, i) => Math.sin((Math.PI * i) / WINDOW) ** 2);
  const count = Math.max(1, Math.ceil(length / (WINDOW / 2)));
  const power = new Float64Array(WINDOW / 2 + 1);
  const windowed = new Float64Array(WINDOW);
  let spectrum;
  for (let j = 0; j < count; j++) {
    const start = Math.floor((j * length) / count);
    for (let i = 0; i < WINDOW; i++) windowed[i] = hann[i] * samples[(start + i) % length];
    spectrum = fft.forward(windowed, spectrum);
    for (let k = 0; k < power.length; k++) power[k] += spectrum.re[k] ** 2 + spectrum.im[k] ** 2;
  }
  // Parseval: Σ|X|² over all WINDOW bins is WINDOW·Σ(hann·x)²; the mean of hann² is 3/8.
  const scale = 1 / (count * WINDOW * WINDOW * 0.375);
  for (let k = 0; k < power.length; k++) power[k] *= k === 0 || k === WINDOW / 2 ? scale : 2 * scale;
  return { power, binWidth: sampleRate / WINDOW };
}
