import { expect, test } from 'vitest';
import { louderOrQuieter } from '../../../src/lib/format/louder-or-quieter.js';

test('a difference in words', () => {
  expect(louderOrQuieter(8.4)).toBe('8 dB louder');
  expect(louderOrQuieter(-8.6)).toBe('9 dB quieter');
  expect(louderOrQuieter(0.4)).toBe('just as loud');
  expect(louderOrQuieter(-0.4)).toBe('just as loud');
});
