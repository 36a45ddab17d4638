import type { Point } from '../scales/point.js';

/**
 * The height (pixels, y) of a polyline of ascending x at `count` places `first`, `first + step` …; NaN where no part of
 * it passes. Where two parts share a place the later one counts.
 */
export function heightsAlong(
  runs: readonly Point[][],
  first: number,
  step: number,
  count: number
): Float64Array {
  const heights = new Float64Array(count).fill(NaN);
  for (const run of runs)
    for (let i = 1; i < run.length; i++) {
      const a = run[i - 1];
      const b = run[i];
      const from = Math.max(0, Math.ceil((a.x - first) / step));
      const to = Math.min(count - 1, Math.floor((b.x - first) / step));
      for (let k = from; k <= to; k++) {
        const part = b.x > a.x ? (first + k * step - a.x) / (b.x - a.x) : 1;
        heights[k] = a.y + part * (b.y - a.y);
      }
    }
  return heights;
}
