import { expect, test } from 'vitest';
import {
  type Engine,
  engineRpm,
  firingRate,
  patternRate,
  PRIME_MOVER,
  validEngine
} from '../../../src/lib/sounds/engine.js';

const sixteen: Engine = { ...PRIME_MOVER, cylinders: 16 };

test('the throttle goes linearly from idle to full speed', () => {
  expect(engineRpm(PRIME_MOVER, 0)).toBe(400);
  expect(engineRpm(PRIME_MOVER, 4)).toBe(700);
  expect(engineRpm(PRIME_MOVER, 8)).toBe(1000);
});

test('a four-stroke cylinder fires every other turn', () => {
  expect(firingRate(PRIME_MOVER, 400)).toBeCloseTo(40, 10);
  expect(firingRate(sixteen, 450)).toBeCloseTo(60, 10);
  expect(firingRate(sixteen, 1050)).toBeCloseTo(140, 10);
  expect(patternRate(PRIME_MOVER, 600)).toBe(5);
});

test('a two-stroke cylinder fires every turn', () => {
  const engine: Engine = { ...sixteen, cycle: 'two-stroke' };
  expect(firingRate(engine, 315)).toBeCloseTo(84, 10);
  expect(firingRate(engine, 904)).toBeCloseTo(241.07, 2);
  expect(patternRate(engine, 600)).toBe(10);
});

test('a notch off the quadrant is refused', () => {
  for (const notch of [-0.1, 8.1, NaN])
    expect(() => engineRpm(PRIME_MOVER, notch)).toThrow(`notch must be within 0 … 8, got ${notch}`);
});

test('engines that cannot be are refused by name', () => {
  expect(validEngine(PRIME_MOVER)).toBe(PRIME_MOVER);
  const refused = (change: Partial<Engine>) => expect(() => validEngine({ ...PRIME_MOVER, ...change }));
  refused({ cylinders: 0 }).toThrow('number of cylinders');
  refused({ cylinders: 2.5 }).toThrow('number of cylinders');
  refused({ idleRpm: NaN }).toThrow('idle speed');
  refused({ fullRpm: 300 }).toThrow('full speed must be within 400 … 4000 rpm, got 300');
});
