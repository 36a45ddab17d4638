import type { Decibels, Hertz } from '../units.js';

/** Bins on either side of a line that are summed: they hold at least 98 % of a sine in the Hann window. */
const REACH = 1.5;

/** Bins between two lines below which the main lobe of one reaches into the sum of the other. */
const LINE_SPACING = 3.5;

/**
 * Levels of the spectral lines at given frequencies: 10·log10 of the power of the bins within ±1.5 bins of each,
 * against the strongest of the lines given. The sum over a main lobe is the mean square of a sine wherever it falls
 * between the bins, because `powerSpectrum` has the noise bandwidth of the Hann window (1.5 bins: F. J. Harris, Proc.
 * IEEE 66 (1978) 51, table I) in its scale already; the bin of a line alone would lose 1.76 … 3.18 dB. The sum lacks at
 * most 0.09 dB. Noise between the lines counts for three bins of it.
 *
 * @param power mean square a bin, one-sided, of a Hann window (see `powerSpectrum`)
 * @param binWidth spacing of the bins; bin k is at k·binWidth
 * @param frequencies of the lines, in any order
 * @returns dB, one a line; −Infinity for a line without power; NaN for a line that the spectrum cannot show: less than
 *   1.5 bins from 0 Hz or from half the sample rate, or less than 3.5 bins from another of the lines
 * @throws RangeError for a bin width that is not above 0
 */
export function lineLevels(
  power: Float64Array,
  binWidth: Hertz,
  frequencies: readonly Hertz[]
): Float64Array<ArrayBuffer> {
  if (!(binWidth > 0 && binWidth < Infinity))
    throw new RangeError(`bin width must be above 0 Hz, got ${binWidth}`);
  const places = frequencies.map((frequency) => frequency / binWidth);
  const shown = places.map(
    (place, i) =>
      place >= REACH &&
      place <= power.length - 1 - REACH &&
      !places.some((other, j) => j !== i && Math.abs(other - place) < LINE_SPACING)
  );
  const own = places.map((place, i) => (shown[i] ? lobe(power, place) : NaN));
  const strongest = own.reduce((most, sum) => (sum > most ? sum : most), 0);
  return Float64Array.from(own, (sum): Decibels =>
    sum > 0 ? 10 * Math.log10(sum / strongest) : sum === 0 ? -Infinity : NaN
  );
}

function lobe(power: Float64Array, place: number): number {
  let sum = 0;
  for (let k = Math.ceil(place - REACH); k <= place + REACH; k++) sum += power[k];
  return sum;
}
