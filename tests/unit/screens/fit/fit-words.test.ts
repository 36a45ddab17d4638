import { expect, test } from 'vitest';
import { WAYS, type Way } from '../../../../src/lib/fitting/ways.js';
import type { FitLine } from '../../../../src/lib/bench/fit/fit-run.svelte.js';
import {
  changeOf,
  CHANGE_WORDS,
  MEASURE_WORDS,
  measureWords,
  misfitWords
} from '../../../../src/lib/screens/fit/fit-words.js';

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

test('a small change of depth is worth 12 dB an octave, and says what was changed by how much', () => {
  const octave = { ...LINE.measures, reachesDown: 2 * LINE.measures.reachesDown! };
  expect(changeOf(LINE.measures, octave, 'deep')).toEqual({ size: 12, words: 'reaches 100 % less low' });
  expect(CHANGE_WORDS).toEqual({
    length: '1 mm longer',
    width: '1 mm wider',
    height: '1 mm higher',
    depth: '1 mm deeper',
    place: '1 mm off its place',
    'over the board': '1 mm higher over the board',
    gap: 'a gap of 0.1 mm round the frame',
    'resonance up': 'resonance 15 % higher',
    'resonance down': 'resonance 15 % lower'
  });
});

test('what does not fit is told by speaker, the same reason of several ways once', () => {
  const of = (speaker: string, way: Way, why: string, remedy: string | null = null) => ({
    speaker,
    way,
    why,
    remedy
  });
  const cut = 'the roof may not be cut';
  expect(
    misfitWords([
      of('oval', 'roof', cut),
      of('oval', 'roof box', cut),
      of('round', 'box up', 'any', '1 mm off the top of “motor”')
    ])
  ).toEqual([
    {
      speaker: 'oval',
      nowhere: false,
      reasons: [{ ways: 'in the roof and in a box under the roof', why: cut, remedy: null }]
    },
    {
      speaker: 'round',
      nowhere: false,
      reasons: [{ ways: 'in a box inside the body', why: 'any', remedy: '1 mm off the top of “motor”' }]
    }
  ]);
  const all = misfitWords(WAYS.map((way) => of('oval', way, way)));
  expect(all).toMatchObject([{ speaker: 'oval', nowhere: true }]);
  expect(all[0].reasons).toHaveLength(WAYS.length);
});
