import { expect, test } from 'vitest';
import { raisedCosine } from '../../../../src/lib/sounds/blocks/raised-cosine.js';

test('it rises from 0 to 1 with its middle in the middle, and stays there', () => {
  expect([-5, 0, 1, 7, Infinity, -Infinity].map(raisedCosine)).toEqual([0, 0, 1, 1, 1, 0]);
  expect(raisedCosine(0.5)).toBeCloseTo(0.5, 12);
  expect(raisedCosine(1 / 3)).toBeCloseTo(0.25, 12);
  expect(raisedCosine(0.2) + raisedCosine(0.8)).toBeCloseTo(1, 12);
});
