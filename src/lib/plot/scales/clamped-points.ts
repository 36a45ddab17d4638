import type { Area } from './area.js';
import type { Point } from './point.js';

/** How far beyond the edge a level is drawn: out of sight behind the clipping, with its rim. */
const BEYOND = 8;

/**
 * The points of a curve in pixels, with heights held just outside the area where they would leave it: −∞ and gaps (NaN)
 * lie below the floor. For shapes that are filled down to the floor and clipped to the area.
 */
export function clampedPoints(
  across: ArrayLike<number>,
  levelDb: ArrayLike<number>,
  x: (value: number) => number,
  y: (levelDb: number) => number,
  area: Area
): Point[] {
  return Array.from(across, (value, i) => {
    const height = levelDb[i] === Infinity ? area.top - BEYOND : y(levelDb[i]);
    return {
      x: x(value),
      y: Number.isFinite(height)
        ? Math.max(area.top - BEYOND, Math.min(area.bottom + BEYOND, height))
        : area.bottom + BEYOND
    };
  });
}
