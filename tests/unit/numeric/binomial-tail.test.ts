import { expect, test } from 'vitest';
import { binomialTail } from '../../../src/lib/numeric/binomial-tail.js';
import { close } from '../../helpers/close.js';
import reference from '../../reference/trials.json' with { type: 'json' };

test('the tail is that of SciPy', () => {
  for (const { k, n, p, tail } of reference.tails)
    close(binomialTail(k, n, p), tail, {
      rel: 1e-10,
      because: 'rounding of logarithms over up to 10 000 terms'
    });
});

test('what cannot be counted is refused', () => {
  expect(() => binomialTail(1, -1, 0.5)).toThrow('trials must be a whole number within 0 … 10000, got -1');
  expect(() => binomialTail(0.5, 3, 0.5)).toThrow('successes must be a whole number, got 0.5');
  expect(() => binomialTail(1, 3, 1.1)).toThrow('probability must be within 0 … 1, got 1.1');
});

test('at the ends it is certain', () => {
  expect([
    binomialTail(4, 3, 0.5),
    binomialTail(3, 3, 1),
    binomialTail(1, 3, 0),
    binomialTail(-2, 3, 0)
  ]).toEqual([0, 1, 0, 1]);
});
