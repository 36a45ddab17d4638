import { expect, test } from 'vitest';
import { leastWhere } from '../../../src/lib/numeric/least-where.js';
import { close } from '../../helpers/close.js';

test('it is the least value that holds, and never one that does not', () => {
  for (const root of [2, 3, 7.5]) {
    const found = leastWhere([0, 10], 1e-12, (x) => x * x >= root);
    close(found, Math.sqrt(root), { abs: 2e-12, because: 'halved to 1e-12' });
    expect(found * found).toBeGreaterThanOrEqual(root);
  }
});

test('at the ends: all of it holds, or the high end alone', () => {
  expect(leastWhere([2, 3], 1e-9, () => true)).toBeLessThanOrEqual(2 + 1e-9);
  expect(leastWhere([2, 3], 1e-9, () => false)).toBe(3);
});
