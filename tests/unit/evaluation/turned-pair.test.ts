import { expect, test } from 'vitest';
import { turnedPair } from '../../../src/lib/evaluation/turned-pair.js';

test('of two that change places each is ahead in its place by what is between them', () => {
  expect(turnedPair([-20, -22], [-35, -24])).toEqual({
    hand: { index: 0, byDb: 2 },
    layout: { index: 1, byDb: 11 }
  });
  expect(turnedPair([-22, -20], [-24, -35])).toEqual({
    hand: { index: 1, byDb: 2 },
    layout: { index: 0, byDb: 11 }
  });
});

test('of several that do it is the two whose lesser lead is the largest', () => {
  // 0 over 2 by 4, then 2 over 0 by 5; 1 over 2 by 3.9, then by 1 the same way; 0 over 1 by 0.1, then 1 over 0 by 6.
  expect(turnedPair([4, 3.9, 0, -5], [-5, 1, 0, -12])).toEqual({
    hand: { index: 0, byDb: 4 },
    layout: { index: 2, byDb: 5 }
  });
});

test('there is none where the order stays, or turns over by less than is told', () => {
  expect(turnedPair([3, 2, 1], [9, 4, 1])).toBeNull();
  expect(turnedPair([0.4, 0], [0, 8])).toBeNull();
  expect(turnedPair([0.5, 0], [0, 8])).not.toBeNull();
  expect(turnedPair([0], [0])).toBeNull();
  expect(turnedPair([], [])).toBeNull();
});

test('what cannot be told of one place is left out', () => {
  expect(turnedPair([5, 0, 1], [null, 1, 3])).toBeNull();
  expect(turnedPair([5, -Infinity, 1], [0, 3, 1])).toEqual({
    hand: { index: 0, byDb: 4 },
    layout: { index: 2, byDb: 1 }
  });
});
