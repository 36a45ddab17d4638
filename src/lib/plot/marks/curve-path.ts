import { line } from 'd3-shape';
import type { Point } from '../scales/point.js';

const pen = line<Point>(
  (p) => p.x,
  (p) => p.y
).digits(2);

/** The `d` of an SVG path through the visible parts of a curve, to a hundredth of a pixel; empty when none is visible. */
export function curvePath(runs: readonly Point[][]): string {
  return runs.map((run) => pen(run) ?? '').join('');
}
