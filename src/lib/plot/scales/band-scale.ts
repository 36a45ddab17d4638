import { scaleLinear, type ScaleLinear } from 'd3-scale';
import type { Area } from './area.js';
import type { ResponseBand } from '../response-curve.js';
import { levelScale } from './level-scale.js';
import type { PictureRange } from './picture-range.js';

/** How far the floor of the picture lies below the strongest band. */
const bandDepthDb = 45;

/** Part of the area's height left free above the strongest band. */
const headroom = 0.1;

/**
 * Band level in dB to pixels: the strongest outlined band ends a tenth of the height below the top of the area, and the
 * floor lies 45 dB under it. Where the axis tells real levels, bands stand on it like the curves. Null when no band has a finite level: there is nothing to scale by.
 */
export function bandScale(
  bands: readonly ResponseBand[],
  area: Pick<Area, 'top' | 'bottom'>,
  range: Pick<PictureRange, 'top' | 'bottom' | 'zeroDb'>
): ScaleLinear<number, number> | null {
  const strongest = bands.reduce(
    (most, band) => (Number.isFinite(band.outlineDb) ? Math.max(most, band.outlineDb) : most),
    -Infinity
  );
  if (strongest === -Infinity) return null;
  if (range.zeroDb !== undefined) return levelScale(range, area);
  const upper = area.top + headroom * (area.bottom - area.top);
  return scaleLinear([strongest, strongest - bandDepthDb], [upper, area.bottom]);
}
