import { expect, test } from 'vitest';
import { puffSlower, toneSlower } from '../../../../../src/lib/screens/parts/waves/slow-words.js';

test('how much slower: a period takes 1.6 s, a puff 8 s', () => {
  expect(toneSlower(1000)).toBe('1600 times slower');
  expect(toneSlower(4640)).toBe('7400 times slower');
  expect(puffSlower(0.0025)).toBe('3200 times slower');
});
