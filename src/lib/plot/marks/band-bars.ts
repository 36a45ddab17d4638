import type { Area } from '../scales/area.js';
import type { ResponseBand } from '../response-curve.js';

export interface BandBars {
  /** Closed shapes: what comes through of each band. */
  filled: string;
  /** Closed shapes: what it adds on top of the band as it is. */
  added: string;
  /** Lines along the top of what comes through. */
  rims: string;
  /** Open-bottomed outlines of the bands as they are. */
  outlines: string;
}

/** Free pixels between two neighbouring bars. */
const gap = 3;

/**
 * The bars of the sound's bands as four SVG paths. A bar never leaves the area: what would stand above its top is cut
 * there and gets no rim, below its floor there is no bar.
 *
 * @param x frequency in Hz to pixels
 * @param y band level in dB to pixels
 */
export function bandBars(
  bands: readonly ResponseBand[],
  x: (frequency: number) => number,
  y: (levelDb: number) => number,
  area: Area
): BandBars {
  const bars: BandBars = { filled: '', added: '', rims: '', outlines: '' };
  const height = (levelDb: number) =>
    Number.isFinite(levelDb) ? Math.max(area.top, Math.min(area.bottom, y(levelDb))) : area.bottom;
  for (const band of bands) {
    const left = Math.max(area.left, x(band.low) + gap / 2);
    const right = Math.min(area.right, x(band.high) - gap / 2);
    if (!(right - left >= 1)) continue;
    const outline = height(band.outlineDb);
    const through = height(band.filledDb);
    const solid = Math.max(outline, through);
    if (solid < area.bottom) bars.filled += block(left, right, solid, area.bottom);
    if (through < outline) bars.added += block(left, right, through, outline);
    if (through < area.bottom && through > area.top) bars.rims += `M${n(left)},${n(through)}H${n(right)}`;
    if (outline < area.bottom)
      bars.outlines += `M${n(left)},${n(area.bottom)}V${n(outline)}H${n(right)}V${n(area.bottom)}`;
  }
  return bars;
}

function block(left: number, right: number, top: number, bottom: number): string {
  return `M${n(left)},${n(bottom)}V${n(top)}H${n(right)}V${n(bottom)}Z`;
}

function n(value: number): number {
  return Math.round(value * 100) / 100;
}
