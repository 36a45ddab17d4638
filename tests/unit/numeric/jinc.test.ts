import { expect, test } from 'vitest';
import { jinc } from '../../../src/lib/numeric/jinc.js';
import { close } from '../../helpers/close.js';

// J₁ to ten decimals: M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), table 9.1 (from memory).
test.each([
  [1, 0.4400505857],
  [2, 0.5767248078],
  [3, 0.3390589585],
  [5, -0.3275791376],
  [10, 0.0434727462]
])('the table’s J₁(%s)', (x, j1) => {
  close((jinc(x) * x) / 2, j1, { abs: 1e-7, because: 'the stated error of the polynomials' });
  expect(jinc(-x)).toBe(jinc(x));
});

test('1 at 0, 0 at the zeros of J₁, and no step where one polynomial takes over from the other', () => {
  expect(jinc(0)).toBe(1);
  for (const zero of [3.8317059702, 7.0155866698, 10.1734681351])
    close(jinc(zero), 0, { abs: 1e-7, because: 'the stated error of the polynomials' });
  close(jinc(3 + 1e-9), jinc(3), { abs: 1e-7, because: 'the stated error of the polynomials' });
});

test('it is the mean of a wave over a disc', () => {
  const x = 4.2;
  let sum = 0;
  const n = 2000;
  for (let i = 0; i < n; i++) {
    const s = -1 + (2 * (i + 0.5)) / n;
    sum += (Math.cos(x * s) * 2 * Math.sqrt(1 - s * s) * 2) / n / Math.PI;
  }
  close(jinc(x), sum, { abs: 1e-5, because: 'midpoints of 2000 strips' });
});
