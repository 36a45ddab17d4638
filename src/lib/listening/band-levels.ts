import type { Decibels, Hertz } from '../units.js';

/**
 * Level of a sound in each band: 10·log10 Σ power·weight, the sum over the band. Bin k stands for the frequencies
 * (k ± ½)·binWidth, evenly; the first and last bin have only their inner halves. A band takes of each bin the share
 * that lies in it, so bands as narrow as a bin come out right and neighbouring bands add up to the whole.
 *
 * @param power mean square a bin, one-sided (see `powerSpectrum`)
 * @param binWidth spacing of the bins
 * @param bands edges of the bands, as from `thirdOctaveBands`
 * @param weight a factor on the power of every bin, |H|² of a response on the same bins; 1 if left out
 * @returns dB against a mean square of 1, one a band; −Infinity for a band with nothing in it
 * @throws RangeError if `weight` and `power` differ in length
 */
export function bandLevels(
  power: Float64Array,
  binWidth: Hertz,
  bands: readonly { lower: Hertz; upper: Hertz }[],
  weight?: Float64Array
): Float64Array<ArrayBuffer> {
  if (weight && weight.length !== power.length)
    throw new RangeError(`weight must have ${power.length} bins, got ${weight.length}`);
  const last = power.length - 1;
  return Float64Array.from(bands, ({ lower, upper }): Decibels => {
    const first = Math.max(0, Math.floor(lower / binWidth - 0.5));
    let sum = 0;
    for (let k = first; k <= last && (k - 0.5) * binWidth < upper; k++) {
      const from = k === 0 ? 0 : (k - 0.5) * binWidth;
      const to = k === last ? k * binWidth : (k + 0.5) * binWidth;
      const share = Math.max(0, Math.min(upper, to) - Math.max(lower, from)) / (to - from);
      sum += share * power[k] * (weight ? weight[k] : 1);
    }
    return 10 * Math.log10(sum);
  });
}
