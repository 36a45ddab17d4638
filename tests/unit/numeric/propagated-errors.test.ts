import { expect, test } from 'vitest';
import { propagatedErrors } from '../../../src/lib/numeric/propagated-errors.js';
import { close } from '../../helpers/close.js';

test('of a sum the errors add in squares, of a product their shares do', () => {
  const [sum, product] = propagatedErrors(([x, y]) => [x + y, x * y], [3, 4], [0.03, 0.04]);
  close(sum, 0.05, { rel: 1e-9, because: '√(0.03² + 0.04²)' });
  close(product, 12 * Math.hypot(0.01, 0.01), { rel: 1e-9, because: '1 % and 1 % of 12' });
});

test('a reading without error adds none', () => {
  expect(propagatedErrors(([x]) => [x * x], [3], [0])).toEqual([0]);
});

test('a power multiplies the share', () => {
  const [error] = propagatedErrors(([x]) => [x ** 3], [2], [0.02]);
  close(error / 8, 0.03, { rel: 1e-6, because: 'three times 1 %; what is bent beyond is a millionth' });
});
