import type { Area } from './area.js';

/**
 * The part of the straight line from (x0, y0) to (x1, y1) that lies in the area, as the two fractions of the way along
 * it, or null when none does (Y.-D. Liang and B. A. Barsky, "A new concept and method for line clipping",
 * ACM Trans. Graphics 3 (1984)). Finite coordinates only.
 */
export function clipSegment(
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  area: Area
): [enter: number, leave: number] | null {
  let enter = 0;
  let leave = 1;
  const dx = x1 - x0;
  const dy = y1 - y0;
  const walls = [-dx, x0 - area.left, dx, area.right - x0, -dy, y0 - area.top, dy, area.bottom - y0];
  for (let i = 0; i < 8; i += 2) {
    const outward = walls[i];
    const room = walls[i + 1];
    if (outward === 0) {
      if (room < 0) return null;
    } else if (outward < 0) enter = Math.max(enter, room / outward);
    else leave = Math.min(leave, room / outward);
    if (enter > leave) return null;
  }
  return [enter, leave];
}
