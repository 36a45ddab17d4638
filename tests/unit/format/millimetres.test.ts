import { expect, test } from 'vitest';
import { millimetres } from '../../../src/lib/format/millimetres.js';

test('whole where it is whole, else to a tenth', () => {
  expect(millimetres(0.102)).toBe('102');
  expect(millimetres(0.1016)).toBe('101.6');
  expect(millimetres(0.10164)).toBe('101.6');
});

test('a proper minus, and none before nothing', () => {
  expect(millimetres(-0.0035)).toBe('−3.5');
  expect(millimetres(0)).toBe('0');
  expect(millimetres(-0)).toBe('0');
  expect(millimetres(-0.00001)).toBe('0');
});
