import { expect, test } from 'vitest';
import { largeLetters } from '../../../../src/lib/screens/hall/large-letters.js';

/** Room for words in a hall of 1280 × 800, and its least and largest letters. */
const ROOM = { width: 1160, height: 660, least: 28, most: 94 };

test('few words are as large as looks well', () => {
  expect(largeLetters(['Why?'], ROOM)).toBe(94);
});

test('a line stays in one row where that leaves the letters large', () => {
  const line = 'The back of the cone pushes';
  const size = largeLetters([line], ROOM);
  expect(size).toBeLessThan(94);
  expect(size).toBeGreaterThan(47);
  // Half a height a letter is on the wide side for the display face.
  expect(0.5 * size * line.length).toBeLessThanOrEqual(ROOM.width + 1e-9);
});

test('long lines are broken between words and stay large', () => {
  const line = 'a word '.repeat(12).trim();
  const size = largeLetters([line], ROOM);
  expect(size).toBe(94);
});

test('the more lines, the smaller; a word is never wider than the room; never below the least', () => {
  const lines = Array.from({ length: 8 }, () => 'front and back');
  expect(largeLetters(lines, ROOM) * 1.25 * 8).toBeLessThanOrEqual(ROOM.height);
  const word = 'Donau'.repeat(12);
  expect(0.5 * largeLetters([word], ROOM) * word.length).toBeLessThanOrEqual(ROOM.width * 1.0001);
  expect(largeLetters(['x'.repeat(320)], ROOM)).toBe(28);
});

test('an empty line takes half a row', () => {
  const tall = { ...ROOM, height: 94 * 1.25 * 2.5 };
  expect(largeLetters(['one', '', 'two'], tall)).toBe(94);
  expect(largeLetters(['one', '', '', 'two'], tall)).toBeLessThan(94);
});
