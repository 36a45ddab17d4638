import { logGrid } from '../../numeric/log-grid.js';
import { HALF_THIRD_OCTAVE, thirdOctaveBands, USUAL_RANGE } from '../../numeric/third-octave-bands.js';
import type { Decibels, Hertz } from '../../units.js';
import type { Response } from '../response.js';

const WITHIN: Decibels = 10;
const POINTS_PER_OCTAVE = 96;

/**
 * "Reaches down to": the lowest frequency above which, up to 16 kHz, the third-octave response stays within 10 dB,
 * both ways, of its mean from 800 Hz to 4 kHz; null if there is none. The response is smoothed by a sliding
 * power mean over a third of an octave (edges a factor 10^{±1/20} away, IEC 61260-1:2014), even on a
 * logarithmic scale, as pink noise would weigh it; the mean is that of the levels in dB of the eight bands of
 * 800 Hz … 4 kHz. If the level stays within 10 dB all the way, the response's lowest frequency is given.
 *
 * @param response its grid (above 0 Hz, at least 48 points an octave) covers at least 700 Hz … 4.5 kHz
 * @throws RangeError if the grid does not cover that
 */
export function reachesDown(response: Response): Hertz | null {
  const first = response.frequency.findIndex((f) => f > 0);
  const { frequency } = response;
  const least = frequency[first];
  const most = frequency[frequency.length - 1];
  const bands = thirdOctaveBands(800, 4000);
  if (!(least <= bands[0].lower && most >= bands[bands.length - 1].upper))
    throw new RangeError(`a response must cover 700 Hz … 4.5 kHz to be judged, got ${least} … ${most} Hz`);

  const smoothed = slidingPower(response, first);
  const mean = bands.reduce((sum, { lower, upper }) => sum + smoothed(lower, upper), 0) / bands.length;
  if (!Number.isFinite(mean)) return null;
  const grid = logGrid(least, Math.min(USUAL_RANGE.to, most), POINTS_PER_OCTAVE);
  const over = (f: Hertz) =>
    Math.abs(smoothed(Math.max(least, f / HALF_THIRD_OCTAVE), Math.min(most, f * HALF_THIRD_OCTAVE)) - mean) -
    WITHIN;
  let above = over(grid[grid.length - 1]);
  if (above > 0) return null;
  for (let i = grid.length - 2; i >= 0; i--) {
    const here = over(grid[i]);
    // where the curve crosses the 10 dB, on a logarithmic scale
    if (here > 0)
      return here === Infinity
        ? grid[i + 1]
        : grid[i + 1] * (grid[i] / grid[i + 1]) ** (above / (above - here));
    above = here;
  }
  return least;
}

/** A function that gives the level in dB of the mean power between two frequencies, even in log f. */
function slidingPower(
  { frequency, re, im }: Response,
  first: number
): (lower: Hertz, upper: Hertz) => Decibels {
  const count = frequency.length - first;
  const x = new Float64Array(count);
  const power = new Float64Array(count);
  const sum = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    x[i] = Math.log(frequency[first + i]);
    power[i] = re[first + i] ** 2 + im[first + i] ** 2;
    if (i > 0) sum[i] = sum[i - 1] + ((x[i] - x[i - 1]) * (power[i] + power[i - 1])) / 2;
  }
  const integral = (at: number) => {
    let low = 0;
    let high = count - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (x[middle] <= at) low = middle;
      else high = middle;
    }
    const step = at - x[low];
    const slope = (power[high] - power[low]) / (x[high] - x[low]);
    return sum[low] + step * (power[low] + (slope * step) / 2);
  };
  return (lower, upper) => {
    const [from, to] = [Math.log(lower), Math.log(upper)];
    return 10 * Math.log10((integral(to) - integral(from)) / (to - from));
  };
}
