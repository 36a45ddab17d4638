import { angleInSteps } from '../numeric/angle-in-steps.js';
import type { Degrees } from '../units.js';
import type { Point } from './point.js';

/** Where an ear stands, so many pixels from the cone's middle: 0° is above, to the right is more than 0°; y points down. */
export function earPoint(angleDeg: Degrees, radius: number): Point {
  const angle = (angleDeg * Math.PI) / 180;
  return [radius * Math.sin(angle), -radius * Math.cos(angle)];
}

/** The angle of a place beside the cone's middle, in whole steps, above −180° and at most 180°; y points down. */
export function earAngle([x, y]: Point, step: Degrees): Degrees {
  return angleInSteps(x, -y, step);
}
