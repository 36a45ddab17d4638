import { levelDb } from '../../numeric/level-db.js';
import type { Hertz } from '../../units.js';
import type { Response } from '../response.js';

/** So far from where it is expected, either way, a ring is looked for: far more than what the fit misses in its range. */
const AWAY = 1.3;

/**
 * The highest top of a response near the frequency at which a shell is expected to ring, between the points of its grid that of the
 * parabola through three of them; null where none is there.
 *
 * @param response ascending, even on a logarithmic scale
 * @param expected `ringFrequency`
 * @param to up to here the response was computed
 */
export function ringPeak(response: Response, expected: Hertz, to: Hertz): Hertz | null {
  const { frequency } = response;
  const level = levelDb(response);
  let best = -1;
  for (let i = 1; i + 1 < level.length && frequency[i] <= Math.min(to, expected * AWAY); i++) {
    const top = level[i] >= level[i - 1] && level[i] > level[i + 1];
    if (top && frequency[i] >= expected / AWAY && (best < 0 || level[i] > level[best])) best = i;
  }
  if (best < 0) return null;
  const [before, at, after] = level.subarray(best - 1, best + 2);
  const beside = (before - after) / (2 * (before - 2 * at + after));
  return frequency[best] * (frequency[best + 1] / frequency[best]) ** beside;
}
