import { expect, test } from 'vitest';
import { sensitivity, sensitivityDb } from '../../src/lib/acoustics/speaker/sensitivity.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { close } from '../helpers/close.js';
import { AIR } from '../helpers/demo-installations.js';

// R. H. Small, J. Audio Eng. Soc. 20 (1972) 383: ρ·Sd·Bl/(2π·Mms·Re), worked by hand at 20 °C, 1 V, 1 m
test.each([
  ['oval', 67.332],
  ['phone-11x15', 64.303],
  ['round-23', 69.163],
  ['round-50', 69.449]
])('half-space sensitivity of %s: %f dB', (key, expected) => {
  close(sensitivityDb(SPEAKERS[key], AIR), expected, { abs: 5e-4, because: 'three decimals are given' });
});

test('it goes with force factor and cone area, against moving mass and coil resistance', () => {
  const { oval } = SPEAKERS;
  const { motor } = oval;
  const ratio = (changed: Partial<typeof motor>) =>
    sensitivity({ ...oval, motor: { ...motor, ...changed } }, AIR) / sensitivity(oval, AIR);
  expect(ratio({ bl: motor.bl / 2 })).toBeCloseTo(1 / 2, 12);
  expect(ratio({ mms: 2 * motor.mms })).toBeCloseTo(1 / 2, 12);
  expect(ratio({ re: 2 * motor.re })).toBeCloseTo(1 / 2, 12);
  expect(ratio({ cms: 2 * motor.cms, qms: 9 })).toBe(1);
});
