import { scaleLinear, type ScaleLinear } from 'd3-scale';
import type { Seconds } from '../../units.js';
import type { Area } from './area.js';

/**
 * Time in seconds to pixels across the area, linear, from 0 at its left edge to the duration at its right.
 *
 * @throws RangeError unless the duration is above 0 and finite.
 */
export function timeScale(
  duration: Seconds,
  area: Pick<Area, 'left' | 'right'>
): ScaleLinear<number, number> {
  if (!(duration > 0 && duration < Infinity))
    throw new RangeError(`duration must be above 0 s, got ${duration}`);
  return scaleLinear([0, duration], [area.left, area.right]);
}
