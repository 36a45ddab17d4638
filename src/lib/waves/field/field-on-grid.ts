import { complexArray, type ComplexArray } from '../../numeric/complex-array.js';
import type { Metres } from '../../units.js';
import type { WaveProblem, WaveState } from '../solve/wave-problem.js';
import { addDipoles, wallDipoles } from './wall-dipoles.js';
import { addNearFieldCorrection } from './near-field-correction.js';
import { dipoleKernel } from './dipole-kernel.js';
import { checkGrid, columnAt, rowAt, type SectionGrid } from './section-grid.js';
import { raisedAt } from './raised-at.js';
import { sectionImages, type SectionImages } from './section-images.js';
import { boardOf } from './ways.js';

/** One complex number a pixel, columns·rows, row by row from the top. */
export interface FieldImage {
  re: Float32Array;
  im: Float32Array;
}

/**
 * `fieldAt` at the middle of every pixel of a section: the pressure over jωρ·v of one piston, in metres, so that ρ times the cone's
 * acceleration times this is the pressure in Pa. Edge midpoints act as point dipoles; triangles closer than
 * about two of their edges are integrated in closed form, so that both sides of a wall are right up to it. On a wall, and across
 * its free edge, stands the mean of both sides; below a board stands 0. Up in the picture is up along z of the mesh, where the cone
 * looks: a mount that is turned over has its board at the top.
 *
 * @param loss for a wave that dies away: the wave number of the air is k·(1 − j·loss)
 * @throws RangeError for a grid without pixels or without extent
 */
export function fieldOnGrid(
  problem: WaveProblem,
  state: WaveState,
  grid: SectionGrid,
  loss = 0,
  piston = 0
): FieldImage {
  checkGrid(grid);
  const section = sectionImages(problem, state, grid.plane, piston);
  const sum = complexArray(grid.columns * grid.rows);
  const kernel = dipoleKernel(state.k, loss, reachOf(problem, grid));
  addDipoles(wallDipoles(problem.surface, section, grid), kernel, grid, sum);
  addNearFieldCorrection(problem, section, kernel.half, grid, sum);
  addRaised(problem, state, grid, section, piston, sum);
  clearBelowBoard(problem, grid, sum);
  return { re: Float32Array.from(sum.re), im: Float32Array.from(sum.im) };
}

/** What is raised in chambers, which are drawn as the meshed part has them. */
function addRaised(
  problem: WaveProblem,
  state: WaveState,
  grid: SectionGrid,
  { across, toward, level }: SectionImages,
  piston: number,
  { re, im }: ComplexArray
): void {
  if (problem.chambers.length === 0) return;
  const point: [number, number, number] = [0, 0, 0];
  point[toward] = level;
  for (let row = 0; row < grid.rows; row++)
    for (let column = 0; column < grid.columns; column++) {
      point[across] = columnAt(grid, column);
      point[2] = rowAt(grid, row);
      const raised = raisedAt(problem, state, point, piston);
      re[row * grid.columns + column] += raised.re;
      im[row * grid.columns + column] += raised.im;
    }
}

/** Below the board there is nothing. */
function clearBelowBoard(problem: WaveProblem, grid: SectionGrid, { re, im }: ComplexArray): void {
  const board = boardOf(problem);
  if (!board) return;
  for (let row = 0; row < grid.rows; row++)
    if (board.up * (rowAt(grid, row) - board.at) < 0) {
      re.fill(0, row * grid.columns, (row + 1) * grid.columns);
      im.fill(0, row * grid.columns, (row + 1) * grid.columns);
    }
}

/** A bound on the distance from any pixel to any point of the surface. */
function reachOf({ surface, middle }: WaveProblem, { left, right, bottom, top }: SectionGrid): Metres {
  let extent = 0;
  const { points } = surface.quadrature;
  for (let p = 0; p < points.length; p += 3)
    extent = Math.max(extent, Math.hypot(points[p], points[p + 1], points[p + 2]));
  const corner = Math.hypot(Math.max(-left, right), Math.max(-bottom, top));
  const shift = Math.max(...surface.images.map((image) => Math.hypot(...image.shift)));
  return extent + corner + shift + Math.hypot(middle[0], middle[1]) + Math.abs(middle[2]);
}
