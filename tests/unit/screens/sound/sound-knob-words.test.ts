import { describe, expect, test } from 'vitest';
import {
  knobFigure,
  knobFrom,
  knobRange,
  knobSentence,
  knobUnit
} from '../../../../src/lib/screens/sound/sound-knob-words.js';
import type { NumberKnob } from '../../../../src/lib/sounds/knob.js';
import { knobsOfKind, SOUND_KIND_NAMES } from '../../../../src/lib/sounds/kinds.js';

const knob = (unit: NumberKnob['unit'], min: number, max: number): NumberKnob => ({
  type: 'number',
  name: 'it',
  unit,
  min,
  max,
  step: 0.01,
  usual: min
});

test.each<[NumberKnob['unit'], number, boolean, string]>([
  ['share', 0.355, false, '35.5 %'],
  ['m', 1.753, false, '1.753 m'],
  ['m', 1.7526, true, '69 in'],
  ['m/s', 26.8, false, '96.48 km/h'],
  ['m/s', 26.8224, true, '60 mph'],
  ['rpm', 1000, true, '1000 rpm'],
  ['count', 12, false, '12 '],
  ['cents', -3, false, '−3 cents']
])('%s %f, inches %s: %s', (unit, value, inches, expected) => {
  const one = knob(unit, -10, 2000);
  expect(`${knobFigure(one, value, inches)} ${knobUnit(one, inches)}`).toBe(expected);
});

describe('what is typed', () => {
  test('comes back as it was meant, with or without its unit', () => {
    expect(knobFrom(knob('share', 0, 1), '60', false)).toBeCloseTo(0.6, 12);
    expect(knobFrom(knob('share', 0, 1), ' 60 % ', false)).toBeCloseTo(0.6, 12);
    expect(knobFrom(knob('m', 0.5, 3), '1,75', false)).toBe(1.75);
    expect(knobFrom(knob('m/s', 1, 50), '60 mph', true)).toBeCloseTo(26.8224, 4);
    expect(knobFrom(knob('count', 1, 20), '6', false)).toBe(6);
  });

  test('is no number where it is none', () => {
    for (const text of ['', 'fast', '%', '1 2']) expect(knobFrom(knob('share', 0, 1), text, false)).toBeNaN();
  });

  test('can reach both ends of every knob there is, as they are written', () => {
    for (const kind of SOUND_KIND_NAMES)
      for (const one of Object.values(knobsOfKind(kind))) {
        if (one.type !== 'number') continue;
        for (const inches of [true, false])
          for (const end of [one.min, one.max])
            expect(knobFrom(one, knobFigure(one, end, inches), inches)).toBe(end);
      }
  });
});

test('a range is written in the unit of its figure', () => {
  expect(knobRange(knob('share', 0, 1), false)).toBe('0 to 100');
  expect(knobRange(knob('m', 0.8, 2.2), true)).toBe('31.5 to 86.61');
});

test('what is out of range is said in the units of the page', () => {
  const cutoff = { ...knob('share', 0.1, 0.8), name: 'cutoff' };
  expect(knobSentence(cutoff, 0.99, false)).toBe('cutoff must be within 10 … 80 %, got 99');
  expect(knobSentence(cutoff, NaN, false)).toBe('cutoff must be within 10 … 80 %, got no number');
  expect(knobSentence(cutoff, 0.5, false)).toBeNull();
  const cylinders: NumberKnob = { ...knob('count', 1, 20), name: 'cylinders', whole: true };
  expect(knobSentence(cylinders, 2.5, true)).toBe('cylinders must be a whole number within 1 … 20, got 2.5');
});
