import type { Metres } from '../units.js';
import type { Obstacle, Vehicle } from './vehicle.js';

/** What of a vehicle may be there or not. */
export type VehiclePart = 'cab' | 'chassis' | 'roof' | 'floor';

/** A part of a vehicle as it is at first, in whole millimetres: a start that one changes, not what is usual. */
export function firstPart({ length, width, height }: Vehicle, part: VehiclePart): Partial<Vehicle> {
  switch (part) {
    case 'cab':
      return { cab: { length: share(length, 0.25), width } };
    case 'chassis':
      return { chassis: { height: share(height, 0.2), slit: 0.001, ends: 0.001, depth: 0.001 } };
    case 'roof':
      return { roof: [0, length] };
    case 'floor':
      return { floor: [0, length] };
  }
}

/** What one asks about first, in the order in which it is added. */
const FIRST_NAMES = ['motor', 'weight', 'decoder'];

/** One more thing in the way of a vehicle: on the floor, on the middle line, half as wide and half as high as the inside. */
export function firstObstacle({ length, width, height, chassis, obstacles }: Vehicle): Obstacle {
  const above = chassis?.height ?? 0;
  return {
    name: FIRST_NAMES[obstacles.length] ?? `box ${obstacles.length + 1}`,
    from: share(length, 0.35),
    length: share(length, 0.3),
    aside: 0,
    width: share(width, 0.5),
    above,
    height: share(height - above, 0.5)
  };
}

function share(whole: Metres, part: number): Metres {
  return Math.round(whole * part * 1000) / 1000;
}
