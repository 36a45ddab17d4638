import { expect, test } from 'vitest';
import { readBenchFile } from '../../../../src/lib/file/read-bench-file.js';
import { LOAD_AT_ONCE } from '../../../../src/lib/file/versions/load-at-once.js';
import { usualSound } from '../../../../src/lib/sounds/roster.js';
import { demoBenchText } from '../../../helpers/demo-bench-text.js';

const { raise } = LOAD_AT_ONCE;

test('an old diesel took its load at once', () => {
  const file = { version: 1, sound: { kind: 'diesel', notch: 2 } };
  expect(raise(file)).toEqual({ version: 1, sound: { kind: 'diesel', notch: 2, loading: 0 } });
  expect(file.sound).toEqual({ kind: 'diesel', notch: 2 });
});

test.each([[undefined], [null], ['diesel'], [{ kind: 'steam' }], [{ kind: 'diesel', loading: 'soon' }]])(
  'all else is handed on untouched: %j',
  (sound) => {
    const file = { version: 1, sound };
    expect(raise(file)).toBe(file);
  }
);

test.each([
  [1, { kind: 'diesel', notch: 6 }, 0],
  [1, { kind: 'engine', notch: 6 }, 0],
  [2, { kind: 'diesel', notch: 6 }, 22],
  [2, { kind: 'diesel', notch: 6, loading: 5 }, 5]
])('a file of version %i with %j opens with %i s until full load', (version, sound, loading) => {
  const text = demoBenchText((bench) => {
    bench.version = version;
    bench.sound = sound;
  });
  expect(readBenchFile(text).sound).toMatchObject({ notch: 6, loading });
});

test('an old bench keeps every figure of its sound', () => {
  const { loading, ...old } = {
    ...usualSound('diesel'),
    cylinders: 16,
    idleRpm: 315,
    fullRpm: 905
  } as Record<string, unknown>;
  expect(loading).toBe(22);
  const text = demoBenchText((bench) => {
    bench.version = 1;
    bench.sound = old;
  });
  expect(readBenchFile(text).sound).toEqual({ ...old, loading: 0 });
});
