import { expect, test } from 'vitest';
import { inDigits } from '../../../src/lib/format/in-digits.js';

test.each([
  [0.4236, 2, '0.42'],
  [0.8, 2, '0.8'],
  [348.13, 4, '348.1'],
  [12345, 2, '12000'],
  [0, 4, '0']
])('%d in %d digits is %s', (value, digits, expected) => {
  expect(inDigits(value, digits)).toBe(expected);
});
