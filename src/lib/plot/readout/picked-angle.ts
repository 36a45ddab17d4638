import type { Degrees } from '../../units.js';
import type { Point } from '../scales/point.js';

/** Angles that the pointer picks. */
const STEP: Degrees = 5;

/** The angle of a point about the middle to the nearest 5°, above −180 and at most 180: 0 is up, right of it is positive. */
export function pickedAngle(middle: Point, { x, y }: Point): Degrees {
  const angle = (Math.atan2(x - middle.x, middle.y - y) * 180) / Math.PI;
  const picked = Math.round(angle / STEP) * STEP + 0;
  return picked === -180 ? 180 : picked;
}
