import { complexArray } from '../../numeric/complex-array.js';
import type { Metres } from '../../units.js';
import type { WaveProblem, WaveState } from '../solve/wave-problem.js';
import { addDipoles, wallDipoles } from './wall-dipoles.js';
import { mendNear } from './mend-near.js';
import { dipoleKernel } from './dipole-kernel.js';
import { sectionImages } from './section-images.js';

/** A section through the middle of the cone, seen from the side: columns from left to right, rows from top to bottom. */
export interface SectionGrid {
  /** `length`: the plane y = middle of the cone, x across; `width`: x = middle of the cone, y across. */
  plane: 'length' | 'width';
  /** The edges of the picture from the middle of the mount; plate or roof are at height 0, a shell hangs below. */
  left: Metres;
  right: Metres;
  bottom: Metres;
  top: Metres;
  columns: number;
  rows: number;
}

/** One complex number a pixel, columns·rows, row by row from the top. */
export interface FieldImage {
  re: Float32Array;
  im: Float32Array;
}

/**
 * `fieldAt` at the middle of every pixel of a section: the pressure over jωρ·v, in metres, so that ρ times the cone's
 * acceleration times this is the pressure in Pa. Edge midpoints act as point dipoles; triangles closer than
 * about two of their edges are integrated in closed form, so that both sides of a wall are right up to it. On a wall, and across
 * its free edge, stands the mean of both sides.
 *
 * @param loss for a wave that dies away: the wave number of the air is k·(1 − j·loss)
 * @throws RangeError for a grid without pixels or without extent
 */
export function fieldOnGrid(problem: WaveProblem, state: WaveState, grid: SectionGrid, loss = 0): FieldImage {
  checkGrid(grid);
  const section = sectionImages(problem, state, grid.plane);
  const sum = complexArray(grid.columns * grid.rows);
  const mirrored = Math.abs(grid.left + grid.right) < 1e-9 * (grid.right - grid.left);
  const kernel = dipoleKernel(state.k, loss, reachOf(problem, grid));
  addDipoles(wallDipoles(problem.surface, section, mirrored), kernel, grid, sum);
  mendNear(problem.surface, section, kernel.half, grid, sum);
  return { re: Float32Array.from(sum.re), im: Float32Array.from(sum.im) };
}

/** Where the middle of a column lies across, from the middle of the mount. */
export function columnAt({ left, right, columns }: SectionGrid, column: number): Metres {
  return left + ((column + 0.5) * (right - left)) / columns;
}

/** How high the middle of a row lies. */
export function rowAt({ top, bottom, rows }: SectionGrid, row: number): Metres {
  return top - ((row + 0.5) * (top - bottom)) / rows;
}

function checkGrid({ left, right, bottom, top, columns, rows }: SectionGrid): void {
  if (![columns, rows].every((n) => Number.isInteger(n) && n > 0))
    throw new RangeError(`a grid needs whole columns and rows, got ${columns} × ${rows}`);
  if (!(left < right && bottom < top && Number.isFinite(right - left + top - bottom)))
    throw new RangeError(`a grid needs an extent, got ${left} … ${right} by ${bottom} … ${top} m`);
}

/** A bound on the distance from any pixel to any point of the surface. */
function reachOf({ surface, piston }: WaveProblem, { left, right, bottom, top }: SectionGrid): Metres {
  let extent = 0;
  const { points } = surface.quadrature;
  for (let p = 0; p < points.length; p += 3)
    extent = Math.max(extent, Math.hypot(points[p], points[p + 1], points[p + 2]));
  const corner = Math.hypot(Math.max(-left, right), Math.max(-bottom, top));
  return extent + corner + Math.hypot(...piston.middle);
}
