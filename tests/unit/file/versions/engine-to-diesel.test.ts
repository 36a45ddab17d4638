import { expect, test } from 'vitest';
import { ENGINE_TO_DIESEL } from '../../../../src/lib/file/versions/engine-to-diesel.js';

const { raise } = ENGINE_TO_DIESEL;

test.each([
  [{ kind: 'engine', notch: 6 }, 6],
  [{ kind: 'engine', notch: 0 }, 0],
  [{ kind: 'engine' }, 4]
])('%j is the diesel at notch %i', (sound, notch) => {
  expect(raise({ version: 1, sound })).toEqual({ version: 1, sound: { kind: 'diesel', notch } });
});

test('all else is handed on untouched, unknown keys and wrong values among it', () => {
  const file = { author: 'me', setups: 5, sound: { kind: 'engine', notch: 2 }, version: 1 };
  expect(raise(file)).toEqual({ ...file, sound: { kind: 'diesel', notch: 2 } });
  expect(Object.keys(raise(file))).toEqual(Object.keys(file));
  expect(file.sound).toEqual({ kind: 'engine', notch: 2 });
});

test.each([
  [undefined],
  [null],
  ['engine'],
  [['engine']],
  [{}],
  [{ kind: 'diesel', notch: 99 }],
  [{ kind: 'engines', notch: 3 }]
])('what is no such engine stays as it is: %j', (sound) => {
  const file = { version: 1, sound };
  expect(raise(file)).toBe(file);
});

test.each<[object, string]>([
  [{ notch: 9 }, 'sound.notch must be a whole number from 0 to 8, got 9'],
  [{ notch: -1 }, 'sound.notch must be a whole number from 0 to 8, got -1'],
  [{ notch: 3.5 }, 'sound.notch must be a whole number from 0 to 8, got 3.5'],
  [{ notch: Infinity }, 'sound.notch must be a finite number, got Infinity'],
  [{ notch: '4' }, 'sound.notch must be a number, got "4"'],
  [{ notch: null }, 'sound.notch must be a number, got null'],
  [{ notch: 4, cylinders: 12 }, 'sound has an unknown key "cylinders"'],
  [{ name: 'No. 41' }, 'sound has an unknown key "name"']
])('an engine that never was is refused by the place it was written at: %j', (values, sentence) => {
  expect(() => raise({ sound: { kind: 'engine', ...values } })).toThrow(new RangeError(sentence));
});
