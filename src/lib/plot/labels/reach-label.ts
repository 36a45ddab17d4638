import type { Area } from '../scales/area.js';
import type { Box } from '../scales/box.js';
import { markerLabels, type MarkerLabel } from './marker-labels.js';
import type { Point } from '../scales/point.js';

/**
 * Where the words about the reach of the speaker stand: in the region they speak of, on the left of its boundary at `x`,
 * and clear of the marked lines if that can be had. Null where there is no clear place.
 */
export function reachLabel(
  x: number,
  text: string,
  area: Area,
  textSize: number,
  obstacles: { boxes: readonly Box[]; lines: readonly Box[]; runs: readonly Point[][] }
): MarkerLabel | null {
  const region = { ...area, right: x };
  const beside = (boxes: readonly Box[]) =>
    markerLabels([{ x, text }], region, textSize, {
      discs: [],
      discRadius: 0,
      boxes,
      runs: obstacles.runs
    })[0];
  return beside([...obstacles.boxes, ...obstacles.lines]) ?? beside(obstacles.boxes);
}
