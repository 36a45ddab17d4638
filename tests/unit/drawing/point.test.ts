import { expect, test } from 'vitest';
import { roundedPath, straightPath, type Point } from '../../../src/lib/drawing/point.js';

test('a straight path goes through its points', () => {
  expect(
    straightPath([
      [0, 0],
      [10, 0],
      [10, 5.126]
    ])
  ).toBe('M0,0L10,0L10,5.13');
});

test('a corner is rounded by its radius, ends stay where they are', () => {
  expect(
    roundedPath(
      [
        [0, 0],
        [10, 0],
        [10, 10]
      ],
      2
    )
  ).toBe('M0,0L8,0Q10,0 10,2L10,10');
});

test('short sides are rounded half-way at most, so that roundings never cross', () => {
  expect(
    roundedPath(
      [
        [0, 0],
        [2, 0],
        [2, 10]
      ],
      5
    )
  ).toBe('M0,0L1,0Q2,0 2,5L2,10');
});

test('points that coincide make no number that is none', () => {
  const twice: Point[] = [
    [1, 1],
    [1, 1],
    [1, 1],
    [4, 1]
  ];
  expect(roundedPath(twice, 3)).not.toContain('NaN');
});
