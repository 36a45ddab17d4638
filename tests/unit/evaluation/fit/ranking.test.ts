import { describe, expect, it, test } from 'vitest';
import { MEASURE_NAMES, ranked, type Measured } from '../../../../src/lib/evaluation/fit/ranking.js';

const line = (key: string, levelDb: number, part: Partial<Measured> = {}): Measured => ({
  key,
  accuracy: 'draft',
  measures: { levelDb, reachesDown: 300, unevennessDb: 5 },
  space: 1e-5,
  price: null,
  loudest: null,
  ...part
});
const places = (lines: Measured[], by: (typeof MEASURE_NAMES)[number] = 'level') =>
  ranked(lines, by).map(({ line: { key }, place, tied }) => `${place}${tied ? '=' : ''} ${key}`);

describe('what lies within the errors of both is tied', () => {
  it('drafts within 1.2 dB of the first of their place, full solutions within 0.6', () => {
    expect(places([line('a', 60), line('b', 58.9), line('c', 58.7)])).toEqual(['1= a', '1= b', '3 c']);
    const full = { accuracy: 'full' } as const;
    expect(places([line('a', 60, full), line('b', 59.3, full), line('c', 58.9, full)])).toEqual([
      '1 a',
      '2= b',
      '2= c'
    ]);
    expect(places([line('a', 60, full), line('b', 59.2)])).toEqual(['1= a', '1= b']);
  });

  it('against the first, so that no chain of ties ties what is far apart', () => {
    expect(places([line('a', 60), line('b', 59), line('c', 58), line('d', 57)])).toEqual([
      '1= a',
      '1= b',
      '3= c',
      '3= d'
    ]);
  });
});

test('deeper: a tenth of an octave is a tie between drafts; what reaches nowhere is last', () => {
  const deep = (key: string, reachesDown: number | null) =>
    line(key, 60, { measures: { levelDb: 60, reachesDown, unevennessDb: 5 } });
  expect(
    places([deep('a', 320), deep('b', 300), deep('c', 240), deep('d', null), deep('e', null)], 'deep')
  ).toEqual(['1 c', '2= b', '2= a', '4= d', '4= e']);
});

test('least space is exact, most even is least uneven, and what is not measured yet stands behind', () => {
  expect(
    places(
      [line('a', 60, { space: 2e-6 }), line('b', 60, { space: 1e-6 }), line('c', 60, { space: 1e-6 })],
      'space'
    )
  ).toEqual(['1= b', '1= c', '3 a']);
  const even = (key: string, unevennessDb: number) =>
    line(key, 60, { measures: { levelDb: 60, reachesDown: 1, unevennessDb } });
  expect(places([even('a', 5), even('b', 3)], 'even')).toEqual(['1 b', '2 a']);
  const loud = (key: string, levelDb: number | null) =>
    line(key, 0, { loudest: levelDb === null ? null : { levelDb, volts: 1, limit: 'travel' } });
  expect(places([loud('a', null), loud('b', 70), loud('c', 90)], 'loudest')).toEqual(['1 c', '2 b', '3 a']);
});

test('cheapest first; what has no price stands behind', () => {
  expect(places([line('a', 60), line('b', 60, { price: 9 }), line('c', 60, { price: 4 })], 'price')).toEqual([
    '1 c',
    '2 b',
    '3 a'
  ]);
});

test('equal lines stand in the order of their keys, whatever order they came in', () => {
  const lines = [line('b', 60), line('a', 60), line('c', 60)];
  for (const by of MEASURE_NAMES) expect(places(lines, by)).toEqual(places([...lines].reverse(), by));
});

test('nothing is ranked as nothing', () => {
  expect(ranked([], 'level')).toEqual([]);
});
