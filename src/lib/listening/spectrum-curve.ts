import type { Decibels, Hertz } from '../units.js';

/** A spectrum as a curve to be drawn, ascending in frequency. */
export interface SpectrumCurve {
  frequency: Float64Array<ArrayBuffer>;
  levelDb: Float64Array<ArrayBuffer>;
}

/**
 * A narrow-band spectrum reduced to about `points` points without losing a line: the range is cut into steps of equal
 * ratio, and each step that holds a bin gives one point, at the frequency and level of its strongest bin. Where the bins
 * stand wider than the steps, every bin is a point. One bin beyond either end is a point, too, so that the curve reaches
 * the ends; not the bin at 0 Hz. Levels are 10·log10(power·weight) against the strongest of
 * those bins in `power` alone, so a spectrum and what a mount lets through of it (weight = |H|²) share one scale.
 * A line half-way between two bins of a Hann window reads 1.42 dB low (scallop loss, F. J. Harris, Proc. IEEE 66 (1978)
 * 51, table I); for the level of a line see `lineLevels`.
 *
 * @param power mean square a bin, one-sided (see `powerSpectrum`)
 * @param binWidth spacing of the bins; bin k is at k·binWidth
 * @param from lowest frequency, above 0
 * @param to highest frequency
 * @param points 1 or more; the curve has at most two more
 * @param weight a factor on the power of every bin; 1 if left out
 * @returns −Infinity where there is no power; no points where `power` ends below the range
 * @throws RangeError for a range that does not rise from above 0, points that are not a whole number of at least 1, a
 *   weight of another length than `power`
 */
export function spectrumCurve(
  power: Float64Array,
  binWidth: Hertz,
  from: Hertz,
  to: Hertz,
  points: number,
  weight?: Float64Array
): SpectrumCurve {
  if (!(from > 0 && to > from && to < Infinity))
    throw new RangeError(`frequency range must rise from above 0 Hz, got ${from} … ${to} Hz`);
  if (!(Number.isInteger(points) && points >= 1))
    throw new RangeError(`points must be a whole number of at least 1, got ${points}`);
  if (weight && weight.length !== power.length)
    throw new RangeError(`weight must have ${power.length} bins, got ${weight.length}`);
  const first = Math.max(1, Math.floor(from / binWidth));
  const last = Math.min(power.length - 1, Math.ceil(to / binWidth));
  const frequency: Hertz[] = [];
  const strengths: number[] = [];
  let strongest = 0;
  let reached = -2;
  for (let k = first; k <= last; k++) {
    strongest = Math.max(strongest, power[k]);
    const strength = weight ? power[k] * weight[k] : power[k];
    const share = Math.log((k * binWidth) / from) / Math.log(to / from);
    const step = Math.max(-1, Math.min(points, Math.floor(share * points)));
    if (step === reached) {
      if (strength <= strengths[strengths.length - 1]) continue;
      frequency.pop();
      strengths.pop();
    }
    reached = step;
    frequency.push(k * binWidth);
    strengths.push(strength);
  }
  const level = (strength: number): Decibels =>
    strength > 0 ? 10 * Math.log10(strength / strongest) : -Infinity;
  return { frequency: Float64Array.from(frequency), levelDb: Float64Array.from(strengths, level) };
}
