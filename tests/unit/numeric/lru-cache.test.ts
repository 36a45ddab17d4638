import { expect, test } from 'vitest';
import { LruCache } from '../../../src/lib/numeric/lru-cache.js';

test('of a least-recently-used cache the value used longest ago makes room, and whoever asked to be told is told', () => {
  const forgotten: string[] = [];
  const cache = new LruCache<number>(3, (key) => forgotten.push(key));
  for (const [key, value] of [
    ['a', 1],
    ['b', 2],
    ['c', 3]
  ] as const)
    cache.set(key, value);
  expect(cache.get('a')).toBe(1);
  cache.set('d', 4);
  expect(forgotten).toEqual(['b']);
  expect([cache.get('b'), cache.get('a'), cache.get('d')]).toEqual([undefined, 1, 4]);
});

test('a value set again is the newest, and one deleted makes room without a word', () => {
  const forgotten: string[] = [];
  const cache = new LruCache<number>(2, (key) => forgotten.push(key));
  cache.set('a', 1);
  cache.set('b', 2);
  cache.set('a', 3);
  cache.delete('b');
  cache.set('c', 4);
  expect(forgotten).toEqual([]);
  cache.set('d', 5);
  expect(forgotten).toEqual(['a']);
});

test('values can have weights: the oldest make room until the rest is light enough, but the newest stays', () => {
  const forgotten: string[] = [];
  const cache = new LruCache<number>(
    10,
    (key) => forgotten.push(key),
    (weight) => weight
  );
  cache.set('a', 4);
  cache.set('b', 3);
  cache.set('c', 3);
  expect(forgotten).toEqual([]);
  cache.get('a');
  cache.set('d', 5);
  expect(forgotten).toEqual(['b', 'c']);
  expect(cache.keys).toEqual(['a', 'd']);
  cache.set('e', 11);
  expect(cache.keys).toEqual(['e']);
});
