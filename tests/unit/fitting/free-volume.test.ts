import { expect, test } from 'vitest';
import { freeVolume, planOf } from '../../../src/lib/fitting/free-volume.js';
import { roomInside } from '../../../src/lib/fitting/room-inside.js';
import type { Obstacle, Vehicle } from '../../../src/lib/fitting/vehicle.js';
import { close } from '../../helpers/close.js';

const VEHICLE: Vehicle = {
  name: 'any',
  length: 0.1,
  width: 0.02,
  height: 0.03,
  above: 0.014,
  obstacles: [],
  openings: 0
};
const BOX: Obstacle = {
  name: 'motor',
  from: 0.02,
  length: 0.04,
  aside: 0,
  width: 0.01,
  above: 0,
  height: 0.02
};
const because = 'by hand';

function free(part: Partial<Vehicle>): number {
  const vehicle = { ...VEHICLE, ...part };
  return freeVolume(vehicle, roomInside(vehicle)) * 1e6;
}

test('the air that nothing fills, in cm³', () => {
  close(free({}), 60, { abs: 1e-9, because });
  // 4 × 1 × 2 cm
  close(free({ obstacles: [BOX] }), 52, { abs: 1e-9, because });
  // another of the same size, of which half is in the first
  close(free({ obstacles: [BOX, { ...BOX, from: 0.04 }] }), 48, { abs: 1e-9, because });
  // a chassis takes 1 cm of height, and of the box as much
  const chassis = { height: 0.01, slit: 0, ends: 0, depth: 0.001 };
  close(free({ obstacles: [BOX], chassis }), 36, { abs: 1e-9, because });
  // what lies within the chassis takes nothing more
  close(free({ obstacles: [{ ...BOX, height: 0.008 }], chassis }), 40, { abs: 1e-9, because });
});

test('a wider cab adds its part, and the plan has the mean width', () => {
  const cab = { length: 0.04, width: 0.03 };
  // 6 × 2 × 3 and 4 × 3 × 3 cm
  close(free({ cab }), 72, { abs: 1e-9, because });
  const { length, width } = planOf({ ...VEHICLE, cab });
  expect(length).toBe(0.1);
  // (6 · 2 + 4 · 3) cm² over 10 cm
  close(width, 0.024, { abs: 1e-12, because });
});
