import { describe, expect, test } from 'vitest';
import { checkKnobs, knobFault, usualValues, type SoundKnobs } from '../../../src/lib/sounds/knob.js';

const KNOBS = {
  size: { type: 'number', name: 'driver diameter', unit: 'm', min: 0.8, max: 2.2, step: 0.01, usual: 1.5 },
  count: { type: 'number', name: 'cylinders', unit: 'count', min: 2, max: 3, step: 1, usual: 2, whole: true },
  layout: { type: 'choice', name: 'layout', options: ['vee', 'in-line'], usual: 'vee' },
  open: { type: 'switch', name: 'drain cocks', usual: false },
  chord: { type: 'chord', name: 'notes', fewest: 1, most: 3, lowest: -5, highest: 5, usual: [0, 4] }
} as const satisfies SoundKnobs;

const usual = usualValues(KNOBS);

test('the usual values are those of the knobs, and pass', () => {
  expect(usual).toEqual({ size: 1.5, count: 2, layout: 'vee', open: false, chord: [0, 4] });
  expect(() => checkKnobs(KNOBS, usual)).not.toThrow();
});

test('both ends of a range belong to it', () => {
  for (const size of [0.8, 2.2]) expect(knobFault(KNOBS.size, size)).toBeNull();
  for (const chord of [[-5], [5, 5, 5]]) expect(knobFault(KNOBS.chord, chord)).toBeNull();
});

describe('what a knob cannot be set to is refused in a sentence', () => {
  test.each<[object, string]>([
    [{ size: 0.79 }, 'driver diameter must be within 0.8 … 2.2, got 0.79'],
    [{ size: NaN }, 'driver diameter must be within 0.8 … 2.2, got NaN'],
    [{ size: Infinity }, 'driver diameter must be within 0.8 … 2.2, got Infinity'],
    [{ size: '1' }, 'driver diameter must be within 0.8 … 2.2, got 1'],
    [{ size: undefined }, 'driver diameter must be within 0.8 … 2.2, got undefined'],
    [{ count: 2.5 }, 'cylinders must be a whole number within 2 … 3, got 2.5'],
    [{ layout: 'radial' }, 'layout must be "vee" or "in-line", got radial'],
    [{ open: 1 }, 'drain cocks must be true or false, got 1'],
    [{ chord: [] }, 'notes must have 1 … 3 notes, got 0'],
    [{ chord: 'A' }, 'notes must have 1 … 3 notes, got 0'],
    [{ chord: [0, 1, 2, 3] }, 'notes must have 1 … 3 notes, got 4'],
    [{ chord: [0, 0.5] }, 'notes must be whole semitones within -5 … 5, got 0.5'],
    [{ chord: [6] }, 'notes must be whole semitones within -5 … 5, got 6']
  ])('%j', (change, sentence) => {
    expect(() => checkKnobs(KNOBS, { ...usual, ...change })).toThrow(new RangeError(sentence));
  });
});
