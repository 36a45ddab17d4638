import { angleInSteps } from '../../numeric/angle-in-steps.js';
import type { Degrees } from '../../units.js';
import type { Point } from '../scales/point.js';

/** Angles that the pointer picks. */
const STEP: Degrees = 5;

/** The angle of a point about the middle to the nearest 5°, above −180 and at most 180: 0 is up, right of it is positive. */
export function pickedAngle(middle: Point, { x, y }: Point): Degrees {
  return angleInSteps(x - middle.x, middle.y - y, STEP);
}
