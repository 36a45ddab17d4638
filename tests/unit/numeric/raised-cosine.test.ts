import { expect, test } from 'vitest';
import { raisedCosine } from '../../../src/lib/numeric/raised-cosine.js';
import { close } from '../../helpers/close.js';

test('it rises from 0 to 1 with its middle in the middle, and stays there', () => {
  expect([-Infinity, -5, -1, 0, 1, 2, 7, Infinity].map(raisedCosine)).toEqual([0, 0, 0, 0, 1, 1, 1, 1]);
  const exact = { abs: 1e-15, because: 'rounding' };
  close(raisedCosine(0.5), 0.5, { ...exact, because: 'it is symmetric about its middle' });
  close(raisedCosine(0.25), (1 - Math.SQRT1_2) / 2, { ...exact, because: 'cos 45° = 1/√2' });
  close(raisedCosine(1 / 3), 0.25, { ...exact, because: 'cos 60° = 1/2' });
  close(raisedCosine(0.2) + raisedCosine(0.8), 1, exact);
});
