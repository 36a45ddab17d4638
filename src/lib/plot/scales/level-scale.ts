import { scaleLinear, type ScaleLinear } from 'd3-scale';
import type { Area } from './area.js';
import type { PictureRange } from './picture-range.js';

/**
 * Level in dB to pixels down the area, linear: `top` at its upper edge, `bottom` at its lower.
 *
 * @throws RangeError unless bottom < top, both finite.
 */
export function levelScale(
  range: Pick<PictureRange, 'top' | 'bottom'>,
  area: Pick<Area, 'top' | 'bottom'>
): ScaleLinear<number, number> {
  if (!Number.isFinite(range.top - range.bottom) || range.bottom >= range.top)
    throw new RangeError(`level range must rise, got ${range.bottom} … ${range.top} dB`);
  return scaleLinear([range.top, range.bottom], [area.top, area.bottom]);
}
