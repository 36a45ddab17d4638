import type { Area } from './area.js';
import type { Point } from './point.js';

/** Where a name stands on a curve, and on which side of it. */
export interface BesideLabel extends Point {
  below: boolean;
}

/** The name keeps away from the sides by these shares of the width: there the discs and the zero line's words stand. */
const KEEP = { left: 0.12, right: 0.3 };

/**
 * Where the name of a curve stands that is drawn beside another one: where the two are farthest apart, on the far side, and no disc is
 * closer than `clear`.
 * Null where they share no place inside that has room for it.
 *
 * @param room width and height of the name, in pixels
 */
export function besideLabel(
  runs: readonly Point[][],
  other: readonly Point[][],
  area: Area,
  discs: readonly Point[],
  clear: number,
  room: { width: number; height: number } = { width: 0, height: 0 }
): BesideLabel | null {
  const from = area.left + KEEP.left * (area.right - area.left);
  const to = area.right - KEEP.right * (area.right - area.left);
  const height = new Map(other.flat().map(({ x, y }) => [Math.round(x), y]));
  let found: BesideLabel | null = null;
  let widest = -1;
  for (const { x, y } of runs.flat()) {
    const opposite = height.get(Math.round(x));
    if (x < from || x > to || opposite === undefined) continue;
    if (discs.some((disc) => Math.abs(disc.x - x) < clear && Math.abs(disc.y - y) < clear / 2)) continue;
    if (x - room.width / 2 < area.left || x + room.width / 2 > area.right) continue;
    if (y > opposite ? y + room.height > area.bottom : y - room.height < area.top) continue;
    const apart = Math.abs(y - opposite);
    if (apart > widest) [widest, found] = [apart, { x, y, below: y > opposite }];
  }
  return found;
}
