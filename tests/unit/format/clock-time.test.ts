import { expect, test } from 'vitest';
import { clockTime } from '../../../src/lib/format/clock-time.js';

test('minutes and two digits of seconds', () => {
  expect(clockTime(7)).toBe('0:07');
  expect(clockTime(60)).toBe('1:00');
  expect(clockTime(750.2)).toBe('12:30');
});

test('seconds that round up to a minute are a minute', () => {
  expect(clockTime(59.6)).toBe('1:00');
});
