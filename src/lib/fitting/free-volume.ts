import type { CubicMetres, Metres } from '../units.js';
import { unionVolume, volumeOf, type Block } from './block.js';
import { tidy } from './candidate.js';
import type { RoomInside } from './room-inside.js';
import { narrowing, type Vehicle } from './vehicle.js';

/** Length, and the width that makes the same plan where there are two. */
export function planOf({ length, width, cab }: Vehicle): { length: Metres; width: Metres } {
  if (!cab) return { length, width };
  return { length, width: tidy((width * (length - cab.length) + cab.width * cab.length) / length) };
}

/** The air above the floor that nothing fills. */
export function freeVolume(vehicle: Vehicle, { whole, obstacles }: RoomInside): CubicMetres {
  const clipped = [...obstacles, ...narrowing(vehicle)]
    .map((block): Block => ({ ...block, z: [Math.max(block.z[0], whole.z[0]), block.z[1]] }))
    .filter(({ z }) => z[1] > z[0]);
  return volumeOf(whole) - unionVolume(clipped);
}
