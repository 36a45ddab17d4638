import { describe, expect, it } from 'vitest';
import { usualAbove } from '../../../../src/lib/acoustics/mounts/board.js';
import type { Installation } from '../../../../src/lib/acoustics/installation.js';
import { sectionGrid } from '../../../../src/lib/screens/air/section-grid.js';
import { standsIn } from '../../../../src/lib/screens/parts/waves/stands-in.js';
import { fieldOnGrid } from '../../../../src/lib/waves/field/field-on-grid.js';
import { mountProblem } from '../../../../src/lib/waves/solve/mount-problem.js';
import { solveWave } from '../../../../src/lib/waves/solve/wave-problem.js';
import { AIR, DEMO } from '../../../helpers/demo-installations.js';

function over(installation: Installation, facing: 'up' | 'down', above?: number): Installation {
  const { speaker, mount } = installation;
  return { ...installation, board: { facing, above: above ?? usualAbove(speaker, mount, facing) } };
}

describe('a picture of the air over a board', () => {
  for (const facing of ['up', 'down'] as const)
    it(`has the board where nothing is solved below it, mount ${facing}`, () => {
      const one = over(DEMO['closed box'], facing);
      const grid = { ...sectionGrid(one, 'width'), columns: 3 };
      const { problem, c } = mountProblem(one, AIR, { accuracy: 'draft' });
      const { re } = fieldOnGrid(problem, solveWave(problem, (2 * Math.PI * 1000) / c), grid);
      const rows = Array.from({ length: grid.rows }, (_, row) => re[row * grid.columns] !== 0);
      // As it is drawn: what looks down is turned over.
      const drawn = facing === 'up' ? rows : rows.reverse();
      const scale = grid.rows / (1000 * (grid.top - grid.bottom));
      const { board } = standsIn(one, grid, scale);
      expect(drawn.map((_, row) => row + 0.5 < board!)).toEqual(drawn);
      expect(board).toBeGreaterThan(0.9 * grid.rows);
    });

  it('shows the whole mount and air above it, however high it stands', () => {
    for (const above of [0.03, 0.1, 0.9])
      for (const facing of ['up', 'down'] as const) {
        const one = over(DEMO['cab body'], facing, above);
        const grid = sectionGrid(one, 'width');
        const { standing, y, board } = standsIn(one, grid, 1);
        expect(y + standing.bounds.top).toBeGreaterThan(50);
        expect(board).toBeLessThan(1000 * (grid.top - grid.bottom));
      }
  });

  it('of another mount has as much air, and its board in the same place', () => {
    const plate = over(DEMO['flat plate'], 'up');
    const tender = over(DEMO['closed box'], 'down');
    const grid = sectionGrid(plate, 'width');
    const beside = sectionGrid(tender, 'width', grid);
    expect(beside.right - beside.left).toBeCloseTo(grid.right - grid.left, 12);
    expect(standsIn(tender, beside, 1).board).toBeCloseTo(standsIn(plate, grid, 1).board!, 9);
  });
});

it('in the hand another mount is shown in the same air', () => {
  const grid = sectionGrid(DEMO['flat plate'], 'length');
  expect(sectionGrid(DEMO['closed box'], 'length', grid)).toBe(grid);
});
