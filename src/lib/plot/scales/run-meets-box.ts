import type { Box } from './box.js';
import type { Point } from './point.js';

/** Whether a part of a curve, which goes from left to right, passes through a box. */
export function runMeetsBox(run: readonly Point[], box: Box): boolean {
  for (let i = Math.max(1, firstFrom(run, box.left)); i < run.length; i++) {
    const a = run[i - 1];
    const b = run[i];
    if (a.x > box.right) return false;
    if (Math.max(a.y, b.y) >= box.top && Math.min(a.y, b.y) <= box.bottom) return true;
  }
  return false;
}

/** Index of the first point at `x` or right of it, by halving: a run goes from left to right. */
function firstFrom(run: readonly Point[], x: number): number {
  let [from, to] = [0, run.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (run[middle].x < x) from = middle + 1;
    else to = middle;
  }
  return from;
}
