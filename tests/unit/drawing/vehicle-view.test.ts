import { expect, test } from 'vitest';
import { moved, outlinePath, rectOf } from '../../../src/lib/drawing/vehicle-view.js';
import type { Vehicle } from '../../../src/lib/fitting/vehicle.js';

const MOTOR = {
  name: 'motor',
  from: 0.02,
  length: 0.03,
  aside: 0.002,
  width: 0.01,
  above: 0.005,
  height: 0.02
};
const VEHICLE: Vehicle = {
  name: 'any',
  length: 0.1,
  width: 0.03,
  height: 0.04,
  above: 0.014,
  obstacles: [MOTOR],
  openings: 0
};

test('a block lies in both views where it is, to scale: y from the far side, z from the roof', () => {
  const block = { x: [0.02, 0.05], y: [-0.003, 0.007], z: [0.005, 0.025] } as const;
  const rounded = (rect: object) => Object.values(rect).map((side: number) => Math.round(side * 1e6) / 1e6);
  expect(rounded(rectOf('plan', VEHICLE, block))).toEqual([20, 8, 30, 10]);
  expect(rounded(rectOf('side', VEHICLE, block))).toEqual([20, 15, 30, 20]);
});

test('the outline has the step of a cab, on the right', () => {
  expect(outlinePath('plan', VEHICLE)).toBe('M0,0H100V30H0Z');
  expect(outlinePath('plan', { ...VEHICLE, width: 0.018, cab: { length: 0.025, width: 0.03 } })).toBe(
    'M0,6H75V0H100V30H75V24H0Z'
  );
});

test('what is dragged goes in steps of half a millimetre, as far as the body goes', () => {
  expect(moved('plan', VEHICLE, MOTOR, 0.01023, -0.0031)).toMatchObject({
    from: 0.03,
    aside: 0.005,
    above: 0.005
  });
  expect(moved('side', VEHICLE, MOTOR, -0.5, -0.5)).toMatchObject({ from: 0, aside: 0.002, above: 0.02 });
  expect(moved('plan', VEHICLE, MOTOR, 0.5, 0.5)).toMatchObject({ from: 0.07, aside: -0.01 });
});
