import { expect, test } from 'vitest';
import { DEMO_MODELS } from '../../../src/lib/file/demo-vehicles.js';
import { firstObstacle, firstPart } from '../../../src/lib/fitting/first-parts.js';
import { checkVehicle, MOST_OBSTACLES, type Vehicle } from '../../../src/lib/fitting/vehicle.js';

const VEHICLE: Vehicle = {
  name: 'any',
  length: 0.1,
  width: 0.03,
  height: 0.04,
  above: 0.014,
  obstacles: [],
  openings: 0
};

test('what is added stands on the floor in whole millimetres, and is called what one asks about first', () => {
  const motor = { from: 0.035, length: 0.03, aside: 0, width: 0.015, above: 0, height: 0.02 };
  expect(firstObstacle(VEHICLE)).toEqual({ name: 'motor', ...motor });
  const { chassis } = firstPart(VEHICLE, 'chassis');
  expect(chassis).toEqual({ height: 0.008, slit: 0.001, ends: 0.001, depth: 0.001 });
  expect(firstObstacle({ ...VEHICLE, chassis })).toMatchObject({ above: 0.008, height: 0.016 });
  let filled = VEHICLE;
  for (let i = 0; i < MOST_OBSTACLES; i++)
    filled = { ...filled, obstacles: [...filled.obstacles, firstObstacle(filled)] };
  expect(filled.obstacles.map(({ name }) => name)).toEqual([
    'motor',
    'weight',
    'decoder',
    'box 4',
    'box 5',
    'box 6'
  ]);
  checkVehicle(filled);
});

test('whatever part is put into a model of the drawer, the model stays possible', () => {
  for (const model of DEMO_MODELS) {
    for (const part of ['cab', 'chassis', 'roof', 'floor'] as const)
      if (!model[part]) checkVehicle({ ...model, ...firstPart(model, part) });
    checkVehicle({ ...model, obstacles: [...model.obstacles, firstObstacle(model)] });
  }
  expect(firstPart(VEHICLE, 'cab')).toEqual({ cab: { length: 0.025, width: 0.03 } });
  expect(firstPart(VEHICLE, 'roof')).toEqual({ roof: [0, 0.1] });
  expect(firstPart(VEHICLE, 'floor')).toEqual({ floor: [0, 0.1] });
});
