import { expect, test } from 'vitest';
import { Newest } from '../../../src/lib/numeric/lru-cache.js';

test('the value used longest ago makes room, and whoever asked to be told is told', () => {
  const forgotten: string[] = [];
  const newest = new Newest<number>(3, (key) => forgotten.push(key));
  for (const [key, value] of [
    ['a', 1],
    ['b', 2],
    ['c', 3]
  ] as const)
    newest.set(key, value);
  expect(newest.get('a')).toBe(1);
  newest.set('d', 4);
  expect(forgotten).toEqual(['b']);
  expect([newest.get('b'), newest.get('a'), newest.get('d')]).toEqual([undefined, 1, 4]);
});

test('a value set again is the newest, and one deleted makes room without a word', () => {
  const forgotten: string[] = [];
  const newest = new Newest<number>(2, (key) => forgotten.push(key));
  newest.set('a', 1);
  newest.set('b', 2);
  newest.set('a', 3);
  newest.delete('b');
  newest.set('c', 4);
  expect(forgotten).toEqual([]);
  newest.set('d', 5);
  expect(forgotten).toEqual(['a']);
});

test('values can have weights: the oldest make room until the rest is light enough, but the newest stays', () => {
  const forgotten: string[] = [];
  const newest = new Newest<number>(
    10,
    (key) => forgotten.push(key),
    (weight) => weight
  );
  newest.set('a', 4);
  newest.set('b', 3);
  newest.set('c', 3);
  expect(forgotten).toEqual([]);
  newest.get('a');
  newest.set('d', 5);
  expect(forgotten).toEqual(['b', 'c']);
  expect(newest.keys).toEqual(['a', 'd']);
  newest.set('e', 11);
  expect(newest.keys).toEqual(['e']);
});
