import { area as shape } from 'd3-shape';
import type { Point } from '../scales/point.js';

/** The `d` of a closed SVG path between a curve and a level line at `edge` pixels; empty for no points. */
export function closedPath(points: readonly Point[], edge: number): string {
  const pen = shape<Point>()
    .x((p) => p.x)
    .y1((p) => p.y)
    .y0(edge)
    .digits(2);
  return points.length > 0 ? (pen(points as Point[]) ?? '') : '';
}
