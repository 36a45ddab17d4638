import type { ThirdOctaveBand } from '../numeric/third-octave-bands.js';
import type { Decibels, Hertz } from '../units.js';
import { hearingThresholdDb } from './hearing-threshold.js';

/** A tone in noise is heard from so far below the noise of its critical band (Fletcher's critical ratio; from memory). */
export const CRITICAL_RATIO: Decibels = -4;

/** Width of the critical band about a frequency: 25 + 75·(1 + 1.4·(f/kHz)²)^0.69 (E. Zwicker and E. Terhardt, J. Acoust. Soc. Am. 68 (1980) 1523). */
export function criticalBandwidth(frequency: Hertz): Hertz {
  return 25 + 75 * (1 + 1.4 * (frequency / 1000) ** 2) ** 0.69;
}

/**
 * The level from which something in each third octave is heard in a noise: the threshold of hearing, or the noise in the critical band
 * about the middle of the third octave less 4 dB, whichever is more. Below 500 Hz a critical band is wider than a third octave, so
 * that noise beside it counts, too. Spread of masking from one band to the next ones is left out.
 *
 * @param bands neighbours, up to 12.5 kHz
 * @param noiseDb level of the noise in each, dB re 20 µPa, spread evenly over it
 * @throws RangeError for a band outside the threshold's range
 */
export function maskedThreshold(
  bands: readonly ThirdOctaveBand[],
  noiseDb: ArrayLike<Decibels>
): Float64Array<ArrayBuffer> {
  return Float64Array.from(bands, ({ centre }) => {
    const half = criticalBandwidth(centre) / 2;
    const noise = bands.reduce((sum, { lower, upper }, i) => {
      const share = Math.min(upper, centre + half) - Math.max(lower, centre - half);
      return share > 0 ? sum + (share / (upper - lower)) * 10 ** (noiseDb[i] / 10) : sum;
    }, 0);
    return Math.max(hearingThresholdDb(centre), 10 * Math.log10(noise) + CRITICAL_RATIO);
  });
}
