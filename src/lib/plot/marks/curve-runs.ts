import type { Area } from '../scales/area.js';
import { clipSegment } from '../scales/clip-segment.js';
import type { Point } from '../scales/point.js';

/** Stands for ±∞ in pixels: far outside any picture, near enough for exact arithmetic. */
const farAway = 1e6;
const WHOLE = [0, 1] as const;

/**
 * The visible parts of a curve as polylines in pixels. A gap (NaN) ends a part; so does an edge of the area, exactly on
 * that edge by interpolation between the points on either side (straight in dB over log f). −∞ dB is a point far below
 * the floor. A lone point between two gaps is a part of one point.
 */
export function curveRuns(
  curve: { frequency: Float64Array; levelDb: Float64Array },
  x: (frequency: number) => number,
  y: (levelDb: number) => number,
  area: Area
): Point[][] {
  const runs: Point[][] = [];
  let run: Point[] | null = null;
  let before: Point | null = null;
  let alone = false;
  const close = () => {
    if (alone && before && inside(before, area)) runs.push([before]);
    run = null;
    before = null;
  };
  for (let i = 0; i < curve.frequency.length; i++) {
    const across = x(curve.frequency[i]);
    const down = heightOf(curve.levelDb[i], y);
    if (!(Number.isFinite(across) && Number.isFinite(down))) {
      close();
      continue;
    }
    const here = { x: across, y: down };
    alone = before === null;
    if (before) {
      const seen =
        inside(before, area) && inside(here, area)
          ? WHOLE
          : clipSegment(before.x, before.y, here.x, here.y, area);
      if (seen) {
        if (!run || seen[0] > 0) runs.push((run = [along(before, here, seen[0])]));
        (run as Point[]).push(along(before, here, seen[1]));
      }
      if (!seen || seen[1] < 1) run = null;
    }
    before = here;
  }
  close();
  return runs;
}

/** Pixels of a level; infinities end far outside, because a linear scale makes NaN of them. */
function heightOf(levelDb: number, y: (levelDb: number) => number): number {
  if (levelDb === -Infinity) return farAway;
  if (levelDb === Infinity) return -farAway;
  return Number.isNaN(levelDb) ? NaN : y(levelDb);
}

function along(a: Point, b: Point, part: number): Point {
  if (part === 0) return a;
  if (part === 1) return b;
  return { x: a.x + part * (b.x - a.x), y: a.y + part * (b.y - a.y) };
}

function inside(p: Point, area: Area): boolean {
  return p.x >= area.left && p.x <= area.right && p.y >= area.top && p.y <= area.bottom;
}
