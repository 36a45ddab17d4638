import { expect, test } from 'vitest';
import { millimetres } from '../../../src/lib/format/millimetres.js';
import { numberFrom } from '../../../src/lib/format/number-from.js';

test('comma or point, either minus, blanks around', () => {
  expect(numberFrom('12,5')).toBe(12.5);
  expect(numberFrom('12.5')).toBe(12.5);
  expect(numberFrom(' 7 ')).toBe(7);
  expect(numberFrom('−3')).toBe(-3);
  expect(numberFrom('-3')).toBe(-3);
});

test('what is no number is none', () => {
  for (const text of ['', ' ', 'abc', '12 mm', '1,2,3', '--1', 'NaN']) expect(numberFrom(text)).toBeNaN();
});

test('it reads what is written', () => {
  for (let tenths = -500; tenths <= 2000; tenths += 7)
    expect(numberFrom(millimetres(tenths / 10000))).toBeCloseTo(tenths / 10, 9);
});
