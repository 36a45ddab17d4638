import { expect, test } from 'vitest';
import { nextStill } from '../../../../../src/lib/screens/parts/waves/next-still.js';

test('stills go from the beginning of a puff to its end, evenly, and stay there', () => {
  const seen = [0];
  while (seen.at(-1)! < 1) seen.push(nextStill(seen.at(-1)!));
  expect(seen).toEqual([0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1]);
  expect(nextStill(1)).toBe(1);
});

test('from any moment they go on', () => {
  for (let at = 0; at < 1; at += 0.01) {
    expect(nextStill(at)).toBeGreaterThan(at);
    expect(nextStill(at)).toBeLessThanOrEqual(at + 0.1251);
  }
});
