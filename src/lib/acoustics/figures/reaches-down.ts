import { logGrid } from '../../numeric/log-grid.js';
import { HALF_THIRD_OCTAVE, thirdOctaveBands, USUAL_RANGE } from '../../numeric/third-octave-bands.js';
import type { Decibels, Hertz } from '../../units.js';
import type { Response } from '../response.js';

/** So far below the level it is measured from a response still counts (IEC 60268-5, effective frequency range; from memory). */
const WITHIN: Decibels = 10;
/** From here the bass is followed down: gaps above are a matter of colour. */
const MIDDLE: Hertz = 1000;
const POINTS_PER_OCTAVE = 96;

/**
 * "Reaches down to": how far down from 1 kHz the third-octave response stays no more than 10 dB below a level. Where it lies lower
 * at 1 kHz already, the lowest frequency above at which it comes up to that; null where it never does up to 16 kHz. If it stays above
 * all the way down, the response's lowest frequency is given. The response is smoothed by a sliding power mean over a third of an
 * octave (edges a factor 10^{±1/20} away, IEC 61260-1:2014), even on a logarithmic scale, as pink noise would weigh it. What rises
 * above the level is no loss and stops nothing; nor does a dip above 1 kHz.
 *
 * @param response its grid (above 0 Hz, at least 48 points an octave) covers at least 700 Hz … 4.5 kHz
 * @param level what it is measured from: one and the same, 0 dB, to compare mounts; its own (`midLevel`) to say what falls off
 * @throws RangeError if the grid does not cover that
 */
export function reachesDown(response: Response, level: Decibels = 0): Hertz | null {
  const { frequency, first, smoothed } = judged(response);
  const [least, most] = [frequency[first], frequency[frequency.length - 1]];
  const grid = logGrid(least, Math.min(USUAL_RANGE.to, most), POINTS_PER_OCTAVE);
  const spare = (f: Hertz): Decibels =>
    smoothed(Math.max(least, f / HALF_THIRD_OCTAVE), Math.min(most, f * HALF_THIRD_OCTAVE)) - level + WITHIN;
  let k = grid.findIndex((f) => f >= MIDDLE);
  let here = spare(grid[k]);
  const step = here >= 0 ? -1 : 1;
  for (; k + step >= 0 && k + step < grid.length; k += step) {
    const next = spare(grid[k + step]);
    if (here >= 0 !== next >= 0) return crossing(grid, k, k + step, here, next);
    here = next;
  }
  return step < 0 ? least : null;
}

/**
 * The level of a response's middle: the mean of the levels in dB of the eight third octaves of 800 Hz … 4 kHz.
 *
 * @param response as for `reachesDown`
 * @throws RangeError as `reachesDown` does
 */
export function midLevel(response: Response): Decibels {
  const { smoothed } = judged(response);
  return BANDS.reduce((sum, { lower, upper }) => sum + smoothed(lower, upper), 0) / BANDS.length;
}

const BANDS = thirdOctaveBands(800, 4000);

/** Where the level passes, between two points of the grid, on a logarithmic scale. */
function crossing(grid: Float64Array, a: number, b: number, atA: Decibels, atB: Decibels): Hertz {
  const [inside, outside] = atA >= 0 ? [a, b] : [b, a];
  const [over, under] = atA >= 0 ? [atA, atB] : [atB, atA];
  if (under === -Infinity) return grid[inside];
  return grid[inside] * (grid[outside] / grid[inside]) ** (over / (over - under));
}

function judged(response: Response) {
  const { frequency } = response;
  const first = frequency.findIndex((f) => f > 0);
  const [least, most] = [frequency[first], frequency[frequency.length - 1]];
  if (!(least <= BANDS[0].lower && most >= BANDS[BANDS.length - 1].upper))
    throw new RangeError(`a response must cover 700 Hz … 4.5 kHz to be judged, got ${least} … ${most} Hz`);
  return { frequency, first, smoothed: slidingPower(response, first) };
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
