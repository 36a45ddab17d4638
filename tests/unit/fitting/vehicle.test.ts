import { expect, test } from 'vitest';
import { checkVehicle, type Vehicle } from '../../../src/lib/fitting/vehicle.js';
import { DEMO_MODELS } from '../../../src/lib/file/demo-vehicles.js';

const VEHICLE: Vehicle = {
  name: 'any',
  length: 0.1,
  width: 0.03,
  height: 0.04,
  above: 0.014,
  obstacles: [],
  openings: 0
};
const BOX = { name: 'motor', from: 0.01, length: 0.03, aside: 0, width: 0.02, above: 0, height: 0.02 };

test('the models of the drawer are possible', () => {
  for (const model of DEMO_MODELS) checkVehicle(model);
  expect(DEMO_MODELS.map(({ length, width, height }) => [length, width, height])[0]).toEqual([
    0.152, 0.033, 0.04
  ]);
});

test.each<[Partial<Vehicle>, string]>([
  [{ length: 0 }, 'length of the body must be within 5 … 1000 mm, got 0'],
  [{ width: NaN }, 'width of the body must be within 5 … 1000 mm, got NaN'],
  [
    { cab: { length: 0.1, width: 0.03 } },
    'the cab (100 mm long) must be shorter than the body that it is part of (100 mm)'
  ],
  [{ above: 0 }, 'height of the body over the board must be within 1 … 1000 mm, got 0'],
  [
    { chassis: { height: 0.04, slit: 0, ends: 0, depth: 0.001 } },
    "the chassis (its top 40 mm above the body's lower edge) is as high as the body (40 mm inside)"
  ],
  [
    { chassis: { height: 0.01, slit: 0.015, ends: 0, depth: 0.001 } },
    'the slits round the chassis (15 mm along it, 0 mm at its ends) leave nothing of it'
  ],
  [{ openings: -1 }, 'openings of the body must be within 0 … 10000 cm², got -10000'],
  [{ roof: [0.05, 0.12] }, 'the roof may be cut from 50 to 120 mm, which is no stretch of its 100 mm'],
  [{ floor: [0.05, 0.05] }, 'the floor may be cut from 50 to 50 mm, which is no stretch of its 100 mm'],
  [{ obstacles: Array.from({ length: 7 }, () => BOX) }, 'at most 6 boxes may stand in the way, got 7'],
  [{ obstacles: [{ ...BOX, height: 0 }] }, 'height of “motor” must be within 1 … 3000 mm, got 0'],
  [{ obstacles: [{ ...BOX, from: -0.002 }] }, '“motor” reaches 2 mm out of the body beyond the left end'],
  [{ obstacles: [{ ...BOX, from: 0.08 }] }, '“motor” reaches 10 mm out of the body beyond the right end'],
  [{ obstacles: [{ ...BOX, aside: 0.0065 }] }, '“motor” reaches 1.5 mm out of the body beyond the far side'],
  [{ obstacles: [{ ...BOX, above: 0.021 }] }, '“motor” reaches 1 mm out of the body beyond the roof'],
  [{ obstacles: [{ ...BOX, above: -0.001 }] }, '“motor” reaches 1 mm out of the body beyond the lower edge'],
  [
    { cab: { length: 0.08, width: 0.018 }, obstacles: [{ ...BOX }] },
    '“motor” (20 mm wide) reaches through the side where the body is narrower'
  ]
])('%j is refused in one sentence', (part, sentence) => {
  expect(() => checkVehicle({ ...VEHICLE, ...part })).toThrow(new RangeError(sentence));
});
