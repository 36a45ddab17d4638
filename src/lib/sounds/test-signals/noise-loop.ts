import { complexArray } from '../../numeric/complex-array.js';
import { RealFft } from '../../numeric/fft.js';
import type { Hertz, Seconds } from '../../units.js';
import { random } from '../blocks/random.js';
import { validSampleRate } from '../blocks/sample-rate.js';

const LOWEST: Hertz = 20;
const HIGHEST: Hertz = 20000;
const RMS = 0.1;

/**
 * A loop of noise from 20 Hz to 20 kHz, or to just below half the sample rate, with nothing outside. Every line of its
 * spectrum has exactly the magnitude asked for and a random phase (inverse Fourier transform), so it has no seam.
 * RMS −20 dBFS (0.1).
 *
 * @param seconds 0.1 … 60; the loop has the power of two of samples nearest to it on a logarithmic scale
 * @param density relative power density at line k of the loop, k = 1, 2, …: 1/k is pink, a constant is white
 * @throws RangeError for a duration or sample rate out of range
 */
export function noiseLoop(
  seconds: Seconds,
  sampleRate: Hertz,
  seed: number,
  density: (k: number) => number
): Float32Array {
  validSampleRate(sampleRate);
  if (!(seconds >= 0.1 && seconds <= 60))
    throw new RangeError(`duration must be within 0.1 … 60 s, got ${seconds}`);
  const length = loopLength(seconds, sampleRate);
  const chance = random(seed);
  const spectrum = complexArray(length / 2 + 1);
  const first = Math.max(1, Math.ceil((LOWEST * length) / sampleRate));
  const last = Math.min(length / 2 - 1, Math.floor((HIGHEST * length) / sampleRate));

  // A real spectrum's bin of magnitude m holds the mean square 2·(m/length)².
  let sum = 0;
  for (let k = first; k <= last; k++) sum += density(k);
  const scale = (RMS * length) / Math.sqrt(2 * sum);
  for (let k = first; k <= last; k++) {
    const phase = 2 * Math.PI * chance.uniform();
    const magnitude = scale * Math.sqrt(density(k));
    spectrum.re[k] = magnitude * Math.cos(phase);
    spectrum.im[k] = magnitude * Math.sin(phase);
  }
  return Float32Array.from(new RealFft(length).inverse(spectrum));
}

/** How many samples such a loop has: line k of its spectrum lies at k·sampleRate/length. */
export function loopLength(seconds: Seconds, sampleRate: Hertz): number {
  return 2 ** Math.round(Math.log2(seconds * sampleRate));
}
