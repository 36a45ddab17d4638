import { describe, expect, it } from 'vitest';
import { clampedPoints } from '../../../../src/lib/plot/scales/clamped-points.js';
import { closedPath } from '../../../../src/lib/plot/marks/closed-path.js';

const area = { left: 0, right: 100, top: 10, bottom: 110 };
const y = (levelDb: number) => 10 - levelDb;

describe('clampedPoints', () => {
  it('leaves what is inside alone and holds the rest just outside', () => {
    const points = clampedPoints(
      [0, 1, 2, 3, 4, 5],
      [-50, 40, -500, NaN, -Infinity, Infinity],
      (t) => 10 * t,
      y,
      area
    );
    expect(points).toEqual([
      { x: 0, y: 60 },
      { x: 10, y: 2 },
      { x: 20, y: 118 },
      { x: 30, y: 118 },
      { x: 40, y: 118 },
      { x: 50, y: 2 }
    ]);
  });
});

describe('closedPath', () => {
  it('goes along the curve and back along the edge', () => {
    const d = closedPath(
      [
        { x: 0, y: 60 },
        { x: 10, y: 20.126 }
      ],
      110
    );
    expect(d.replace(/\s/g, '')).toBe('M0,60L10,20.13L10,110L0,110Z');
  });
  it('is empty for no points', () => {
    expect(closedPath([], 110)).toBe('');
  });
});
