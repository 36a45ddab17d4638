import { expect, test } from 'vitest';
import { drawnWidth } from '../../../src/lib/drawing/drawn-width.js';

test('a drawing is as wide as its room; one that is laid out nowhere has some width all the same', () => {
  expect([460, 201].map(drawnWidth)).toEqual([460, 201]);
  expect(drawnWidth(0)).toBeGreaterThan(100);
});
