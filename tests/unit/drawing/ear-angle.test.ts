import { expect, test } from 'vitest';
import { earAngle, earPoint } from '../../../src/lib/drawing/ear-angle.js';
import { close } from '../../helpers/close.js';

test('in front is above the cone, to the side is to its right, behind is below', () => {
  const exact = { abs: 1e-12, because: 'sines and cosines of right angles' };
  for (const [angle, x, y] of [
    [0, 0, -30],
    [90, 30, 0],
    [-90, -30, 0],
    [180, 0, 30]
  ]) {
    const [gotX, gotY] = earPoint(angle, 30);
    close(gotX, x, exact);
    close(gotY, y, exact);
  }
});

test('where it is put is where it stands, in steps, at any distance', () => {
  for (let angle = -175; angle <= 180; angle += 5)
    for (const radius of [3, 30]) expect(earAngle(earPoint(angle, radius), 5)).toBe(angle);
  expect(earAngle([1, -10], 5)).toBe(5);
  expect(Object.is(earAngle([-0.1, -10], 5), 0)).toBe(true);
  expect(earAngle([-0.1, 10], 5)).toBe(180);
});
