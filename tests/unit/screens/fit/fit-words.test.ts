import { expect, test } from 'vitest';
import type { FitLine } from '../../../../src/lib/bench/fit/fit-run.svelte.js';
import { changeOf, MEASURE_WORDS, measureWords } from '../../../../src/lib/screens/fit/fit-words.js';

const LINE = {
  measures: { levelDb: 61.24, reachesDown: 243, unevennessDb: 4.26 },
  space: 13.44e-6,
  price: null,
  loudest: null
} as FitLine;
const words = (part: Partial<FitLine>, by: keyof typeof MEASURE_WORDS) =>
  measureWords({ ...LINE, ...part }, by);

test('a line says each of its figures with what it is of', () => {
  expect(words({}, 'level')).toBe('61.2 dB loud');
  expect(words({}, 'deep')).toBe('down to 240 Hz');
  expect(words({ measures: { ...LINE.measures, reachesDown: null } }, 'deep')).toBe('thin throughout');
  expect(words({}, 'even')).toBe('uneven by 4.3 dB');
  expect(words({}, 'space')).toBe('takes 13 cm³');
  expect(words({}, 'price')).toBe('no price told');
  expect(words({ price: 7.5 }, 'price')).toBe('costs 7.5');
  expect(words({}, 'loudest')).toBe('limits not measured yet');
  expect(words({ loudest: { levelDb: 75.2, volts: 2, limit: 'travel' } }, 'loudest')).toBe(
    'at most 75.2 dB, by its travel'
  );
});

test('a small change is told in the measure that is asked for', () => {
  const then = { levelDb: 60.1, reachesDown: 270, unevennessDb: 4.9 };
  expect(changeOf(LINE.measures, then, 'level').words).toBe('1.1 dB softer');
  expect(changeOf(LINE.measures, then, 'deep').words).toBe('reaches 11 % less low');
  expect(changeOf(LINE.measures, then, 'even').words).toBe('0.6 dB more uneven');
  expect(changeOf(LINE.measures, LINE.measures, 'level')).toEqual({ size: 0, words: 'nothing' });
});
