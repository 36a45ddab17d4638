import { scaleLog, type ScaleLogarithmic } from 'd3-scale';
import type { Area } from './area.js';
import type { PictureRange } from './picture-range.js';

/**
 * Frequency in Hz to pixels across the area, logarithmic: equal ratios take equal widths.
 *
 * @throws RangeError unless 0 < from < to.
 */
export function frequencyScale(
  range: Pick<PictureRange, 'from' | 'to'>,
  area: Pick<Area, 'left' | 'right'>
): ScaleLogarithmic<number, number> {
  if (!(range.from > 0 && range.to > range.from && range.to < Infinity))
    throw new RangeError(`frequency range must rise from above 0 Hz, got ${range.from} … ${range.to} Hz`);
  return scaleLog([range.from, range.to], [area.left, area.right]);
}
