import { describe, expect, it } from 'vitest';
import { heightsAlong } from '../../../../src/lib/plot/labels/heights-along.js';

describe('heightsAlong', () => {
  it('interpolates along the line and is NaN where no part of it passes', () => {
    const runs = [
      [
        { x: 1, y: 0 },
        { x: 5, y: 8 }
      ],
      [
        { x: 8, y: 3 },
        { x: 9, y: 3 }
      ]
    ];
    expect([...heightsAlong(runs, 0, 1, 10)]).toEqual([NaN, 0, 2, 4, 6, 8, NaN, NaN, 3, 3]);
  });
});
