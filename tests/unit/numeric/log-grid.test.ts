import { describe, expect, it } from 'vitest';
import { logGrid } from '../../../src/lib/numeric/log-grid.js';
import { close } from '../../helpers/close.js';

describe('logGrid', () => {
  it('hits octaves and both ends exactly', () => {
    expect([...logGrid(100, 800, 1)].map((f) => Math.round(f * 1e9) / 1e9)).toEqual([100, 200, 400, 800]);
    const grid = logGrid(50, 16000, 48);
    expect([grid[0], grid[grid.length - 1]]).toEqual([50, 16000]);
  });

  it('keeps one ratio from point to point, at least as fine as asked', () => {
    const grid = logGrid(50, 16000, 48);
    const ratio = grid[1] / grid[0];
    expect(ratio).toBeLessThanOrEqual(2 ** (1 / 48));
    expect(ratio).toBeGreaterThan(2 ** (1 / 49));
    for (let i = 1; i < grid.length; i++)
      close(grid[i] / grid[i - 1], ratio, { rel: 1e-12, because: 'rounding' });
  });

  it('refuses a grid from 0, downwards, or without points', () => {
    expect(() => logGrid(0, 100, 3)).toThrow('a logarithmic grid must run from above 0 upwards, got 0 … 100');
    expect(() => logGrid(100, 100, 3)).toThrow(RangeError);
    expect(() => logGrid(20, Infinity, 3)).toThrow(RangeError);
    expect(() => logGrid(20, 200, 0)).toThrow('points per octave must be above 0, got 0');
  });
});
