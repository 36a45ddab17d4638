import { describe, expect, test } from 'vitest';
import { checkKnobs, usualValues } from '../../../../src/lib/sounds/knob.js';
import {
  type Diesel,
  DIESEL_KNOBS,
  dieselEffort,
  dieselRpm,
  dieselSize,
  firingRate,
  patternRate,
  patternTurns
} from '../../../../src/lib/sounds/diesel/diesel.js';
import { DIESEL_PRESETS } from '../../../../src/lib/sounds/diesel/diesel-presets.js';

const USUAL: Diesel = { kind: 'diesel', name: 'any', ...usualValues(DIESEL_KNOBS) };
const NOTCHES = [0, 1, 2, 3, 4, 5, 6, 7, 8];

test('the first notch runs near idle speed, the fourth halfway, the eighth at full; between notches it is straight', () => {
  const at = (notch: number) => dieselRpm({ ...USUAL, idleRpm: 300, fullRpm: 1100, notch });
  const speeds = NOTCHES.map((notch) => Math.round(at(notch)));
  expect(speeds).toEqual([300, 340, 460, 580, 700, 800, 900, 1000, 1100]);
  expect(at(0.5)).toBe(320);
  expect(at(2.5)).toBe(520);
  expect(at(6.5)).toBe(950);
});

test('a full speed below idle speed is refused, the same speed is not', () => {
  const at = (idleRpm: number, fullRpm: number) => dieselRpm({ ...USUAL, idleRpm, fullRpm });
  expect(() => at(900, 600)).toThrow(
    new RangeError('full speed must be at least the idle speed of 900 rpm, got 600')
  );
  expect(at(600, 600)).toBe(600);
});

test('a pattern is two turns of a four-stroke engine and one of a two-stroke one, with every cylinder once', () => {
  for (const cycle of ['four-stroke', 'two-stroke'] as const)
    for (const cylinders of [1, 6, 16]) {
      const sound = { ...USUAL, cycle, cylinders };
      expect(patternTurns(sound)).toBe(cycle === 'two-stroke' ? 1 : 2);
      expect(patternRate(sound, 600) * patternTurns(sound)).toBeCloseTo(10, 12);
      expect(firingRate(sound, 600)).toBeCloseTo(cylinders * patternRate(sound, 600), 12);
    }
});

describe('effort', () => {
  test('rises with the notch, and with the load at the same speed', () => {
    for (const load of [0.2, 0.6, 1]) {
      const efforts = NOTCHES.map((notch) => dieselEffort({ ...USUAL, notch, load }));
      for (let i = 1; i < efforts.length; i++) expect(efforts[i]).toBeGreaterThan(efforts[i - 1]);
    }
    const at5 = [0, 0.5, 1].map((load) => dieselEffort({ ...USUAL, notch: 5, load }));
    expect(at5[1]).toBeGreaterThan(at5[0]);
    expect(at5[2]).toBeGreaterThan(at5[1]);
  });

  test('is 1 at full load and full speed; without a load, and at idle, it is what the engine needs for itself', () => {
    expect(dieselEffort({ ...USUAL, notch: 8, load: 1 })).toBeCloseTo(1, 12);
    expect(dieselEffort({ ...USUAL, notch: 0, load: 1 })).toBeCloseTo(0.1, 12);
    expect(dieselEffort({ ...USUAL, notch: 0, load: 0 })).toBeCloseTo(0.1, 12);
    expect(dieselEffort({ ...USUAL, notch: 8, load: 0 })).toBeCloseTo(0.16, 12);
  });
});

test('a fast engine is small', () => {
  expect(dieselSize({ ...USUAL, fullRpm: 1000 })).toBe(1);
  expect(dieselSize({ ...USUAL, fullRpm: 2500 })).toBeCloseTo(0.632, 3);
});

test('the knobs take every preset and refuse what is outside', () => {
  for (const preset of DIESEL_PRESETS) {
    expect(() => {
      checkKnobs(DIESEL_KNOBS, preset);
    }).not.toThrow();
    expect(() => dieselRpm(preset)).not.toThrow();
  }
  const refusal = (change: object) => () => {
    checkKnobs(DIESEL_KNOBS, { ...USUAL, ...change });
  };
  expect(refusal({ cylinders: 21 })).toThrow(
    'number of cylinders must be a whole number within 1 … 20, got 21'
  );
  expect(refusal({ cylinders: 5.5 })).toThrow('number of cylinders must be a whole number');
  expect(refusal({ notch: 9 })).toThrow('notch must be within 0 … 8, got 9');
  expect(refusal({ charging: 'twin' })).toThrow(
    'charging must be "none" or "turbocharger" or "blower", got twin'
  );
  expect(refusal({ notch: 2.5 })).not.toThrow();
});

test('the presets have names of their own, kinds of their own and seeds of their own', () => {
  expect(new Set(DIESEL_PRESETS.map(({ name }) => name)).size).toBe(DIESEL_PRESETS.length);
  expect(new Set(DIESEL_PRESETS.map(({ seed }) => seed)).size).toBe(DIESEL_PRESETS.length);
  expect(DIESEL_PRESETS.map(({ charging }) => charging)).toEqual(['turbocharger', 'blower', 'none', 'none']);
});
