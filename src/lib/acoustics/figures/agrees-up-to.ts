import type { Decibels, Hertz } from '../../units.js';

/**
 * Up to where an estimate is good: the frequency at which it first departs from the truth by more than `within`, on the
 * way up, on a logarithmic scale between two points; the last point's where it never does. Null where it is off at
 * the first already.
 *
 * @param frequency ascending, above 0 Hz, at least one
 * @param estimateDb same length
 * @param truthDb same length
 */
export function agreesUpTo(
  frequency: Float64Array,
  estimateDb: Float64Array,
  truthDb: Float64Array,
  within: Decibels
): Hertz | null {
  const over = (i: number) => Math.abs(estimateDb[i] - truthDb[i]) - within;
  const first = frequency.findIndex((_, i) => over(i) > 0);
  if (first === 0) return null;
  if (first < 0) return frequency[frequency.length - 1];
  const share = over(first - 1) / (over(first - 1) - over(first));
  return frequency[first - 1] * (frequency[first] / frequency[first - 1]) ** share;
}
