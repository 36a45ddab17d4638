import { expect, test } from 'vitest';
import { besideLabel } from '../../../src/lib/plot/beside-label.js';

const area = { left: 0, right: 1000, top: 0, bottom: 300 };
const xs = Array.from({ length: 101 }, (_, i) => 10 * i);
/** A flat line, and one that leaves it most at 400. */
const flat = [xs.map((x) => ({ x, y: 100 }))];
const bump = [xs.map((x) => ({ x, y: 100 + 80 * Math.exp(-(((x - 400) / 100) ** 2)) }))];

test('a name stands where two curves are farthest apart, on the far side', () => {
  expect(besideLabel(bump, flat, area, [], 60)).toMatchObject({ x: 400, below: true });
  expect(besideLabel(flat, bump, area, [], 60)).toMatchObject({ x: 400, y: 100, below: false });
});

test('it makes room for a disc, keeps off the sides, and is left out where there is nothing to stand beside', () => {
  const { x } = besideLabel(bump, flat, area, [{ x: 400, y: 180 }], 60)!;
  expect(Math.abs(x - 400)).toBeGreaterThanOrEqual(60);
  expect(Math.abs(x - 400)).toBeLessThan(90);
  const rising = [xs.map((x) => ({ x, y: 100 + x / 10 }))];
  expect(besideLabel(rising, flat, area, [], 60)!.x).toBeLessThanOrEqual(700);
  expect(besideLabel(bump, [], area, [], 60)).toBeNull();
});

test('a name that would be cut off stands elsewhere, or nowhere', () => {
  const low = { ...area, bottom: 190 };
  const { y } = besideLabel(bump, flat, low, [], 60, { width: 80, height: 40 })!;
  expect(y).toBeLessThanOrEqual(150);
  expect(y).toBeGreaterThan(130);
  expect(besideLabel(bump, flat, area, [], 60, { width: 1100, height: 40 })).toBeNull();
});
