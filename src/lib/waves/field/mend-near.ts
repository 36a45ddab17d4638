import { triangleFrames } from '../assembly/triangle-potential.js';
import type { ComplexArray } from '../../numeric/complex-array.js';
import type { Surface } from '../mesh/surface.js';
import type { Complex } from './acoustic-load.js';
import { columnAt, rowAt, type SectionGrid } from './field-on-grid.js';
import type { SectionImages } from './section-images.js';
import { triangleLayer } from './triangle-layer.js';
import { SOFT } from './wall-dipoles.js';

/**
 * Triangles closer than so many of their longest edges are integrated in closed form. What a box lets out is small beside what
 * its walls hold, so that it takes more.
 */
const NEAR = { open: 2, closed: 3 };

/**
 * Where a triangle is near a pixel, takes away what its three corners gave as point dipoles with the kernel
 * n·d·(1/r³ + k²/(2r)) and puts the closed form in its place: linear jumps in the first term, their mean in the second.
 * The rest of the kernel is smooth and stays.
 */
export function mendNear(
  { mesh: { points, triangles }, area, normal, open }: Surface,
  { axis, level, images }: SectionImages,
  half: Complex,
  grid: SectionGrid,
  sum: ComplexArray
): void {
  const frames = triangleFrames(points, triangles, normal);
  const other = axis === 0 ? 1 : 0;
  const wide = (grid.right - grid.left) / grid.columns;
  const high = (grid.top - grid.bottom) / grid.rows;
  const near = open ? NEAR.open : NEAR.closed;
  const at = [0, 0, 0];
  const layer = new Float64Array(8);
  for (let t = 0; t < area.length; t++) {
    const corners = [0, 1, 2].map((i) => 3 * triangles[3 * t + i]);
    const centre = [0, 1, 2].map((d) => corners.reduce((s, p) => s + points[p + d] / 3, 0));
    const longest = Math.max(...corners.map((p, i) => edge(points, p, corners[(i + 1) % 3])));
    for (const { across, toward, re, im } of images) {
      const aside = toward * level - centre[other];
      const reach2 = (near * longest) ** 2 - aside * aside;
      if (reach2 <= 0) continue;
      const reach = Math.sqrt(reach2);
      const middle = across * centre[axis];
      const firstColumn = Math.max(0, Math.ceil((middle - reach - grid.left) / wide - 0.5));
      const lastColumn = Math.min(grid.columns - 1, Math.floor((middle + reach - grid.left) / wide - 0.5));
      const firstRow = Math.max(0, Math.ceil((grid.top - centre[2] - reach) / high - 0.5));
      const lastRow = Math.min(grid.rows - 1, Math.floor((grid.top - centre[2] + reach) / high - 0.5));
      at[other] = toward * level;
      for (let row = firstRow; row <= lastRow; row++)
        for (let column = firstColumn; column <= lastColumn; column++) {
          at[axis] = across * columnAt(grid, column);
          at[2] = rowAt(grid, row);
          if ((at[axis] - centre[axis]) ** 2 + (at[2] - centre[2]) ** 2 > reach2) continue;
          triangleLayer(frames, t, at[0], at[1], at[2], layer);
          let [sumRe, sumIm] = [0, 0];
          for (let i = 0; i < 3; i++) {
            const [p, q] = [corners[i], corners[(i + 1) % 3]];
            const [own, next] = [p / 3, q / 3];
            const dx = at[0] - (points[p] + points[q]) / 2;
            const dy = at[1] - (points[p + 1] + points[q + 1]) / 2;
            const dz = at[2] - (points[p + 2] + points[q + 2]) / 2;
            const r2 = dx * dx + dy * dy + dz * dz + SOFT;
            const height = dx * normal[3 * t] + dy * normal[3 * t + 1] + dz * normal[3 * t + 2];
            // over 4π: what the midpoint gave with half of either end's jump, and what each corner's hat gives in truth
            const point = (height * area[t]) / (6 * Math.sqrt(r2));
            const takenRe = point * (1 / r2 + half.re);
            const takenIm = point * half.im;
            const putRe = layer[i] + (half.re * layer[3]) / 3;
            const putIm = (half.im * layer[3]) / 3;
            const [jumpRe, jumpIm] = [re[own] + re[next], im[own] + im[next]];
            sumRe += putRe * re[own] - putIm * im[own] - takenRe * jumpRe + takenIm * jumpIm;
            sumIm += putRe * im[own] + putIm * re[own] - takenRe * jumpIm - takenIm * jumpRe;
          }
          sum.re[row * grid.columns + column] += sumRe / (4 * Math.PI);
          sum.im[row * grid.columns + column] += sumIm / (4 * Math.PI);
        }
    }
  }
}

function edge(points: Float64Array, p: number, q: number): number {
  return Math.hypot(points[p] - points[q], points[p + 1] - points[q + 1], points[p + 2] - points[q + 2]);
}
