import { expect, test } from 'vitest';
import type { VersionStep } from '../../../../src/lib/file/versions/version-step.js';
import { BENCH_VERSION, raiseToNewest } from '../../../../src/lib/file/versions/versions.js';

/** A program of a later day: two more versions, one of them with a change before its number. */
const LATER: VersionStep[] = [
  { from: 1, to: 1, raise: (file) => ({ ...file, steps: [...stepsOf(file), 'old 1'] }) },
  { from: 1, to: 2, raise: (file) => ({ ...file, steps: [...stepsOf(file), '1 to 2'] }) },
  { from: 2, to: 3, raise: (file) => ({ ...file, steps: [...stepsOf(file), '2 to 3'] }) }
];

function stepsOf({ steps }: { steps?: unknown }): string[] {
  return (steps as string[] | undefined) ?? [];
}

test('what is written today is version 8; a file from before the roster takes every step', () => {
  expect(BENCH_VERSION).toBe(8);
  expect(raiseToNewest({ version: 1, sound: { kind: 'engine', notch: 7 } })).toEqual({
    version: 8,
    sound: { kind: 'diesel', notch: 7, loading: 0 },
    view: { model: 'rule' }
  });
});

test('a file of today comes through equal, its keys in their order', () => {
  const file = { unknown: 1, version: 8, sound: { kind: 'bell' }, speakers: {} };
  expect(raiseToNewest(file)).toEqual(file);
  expect(Object.keys(raiseToNewest(file))).toEqual(Object.keys(file));
});

test.each([
  [1, ['old 1', '1 to 2', '2 to 3']],
  [2, ['2 to 3']],
  [3, undefined]
])('from version %i each step is taken once, in order, to the newest', (version, steps) => {
  const file = Object.freeze({ version, left: 'alone' });
  expect(raiseToNewest(file, LATER)).toEqual({ version: 3, left: 'alone', ...(steps && { steps }) });
});

test.each<[unknown, string]>([
  [undefined, 'this bench file does not say its version; this program reads versions 1 … 8'],
  [9, 'this bench file is of version 9; this program reads versions 1 … 8'],
  [0, 'this bench file is of version 0; this program reads versions 1 … 8'],
  [1.5, 'this bench file is of version 1.5; this program reads versions 1 … 8'],
  ['1', 'this bench file is of version "1"; this program reads versions 1 … 8'],
  [null, 'this bench file is of version null; this program reads versions 1 … 8'],
  [{}, 'this bench file is of version an object; this program reads versions 1 … 8']
])('version %j is refused', (version, sentence) => {
  expect(() => raiseToNewest({ version })).toThrow(new RangeError(sentence));
});

test('a program that reads several versions says so', () => {
  expect(() => raiseToNewest({ version: 4 }, LATER)).toThrow(
    new RangeError('this bench file is of version 4; this program reads versions 1 … 3')
  );
});

test('what a step refuses is said, and no later step is asked', () => {
  const refusing: VersionStep = {
    from: 1,
    to: 2,
    raise: () => {
      throw new RangeError('listener.angleDeg is too old');
    }
  };
  expect(() => raiseToNewest({ version: 1 }, [refusing, LATER[2]])).toThrow(
    new RangeError('listener.angleDeg is too old')
  );
});
