import type { ComplexArray } from '../../numeric/complex-array.js';
import type { Metres } from '../../units.js';
import { triangleFrames } from '../assembly/triangle-potential.js';
import type { Surface } from '../mesh/surface.js';
import type { WaveProblem } from '../solve/wave-problem.js';
import type { Complex } from '../../numeric/complex.js';
import { columnAt, rowAt, type SectionGrid } from './section-grid.js';
import type { SectionImage, SectionImages } from './section-images.js';
import { LAYER, triangleLayer } from './triangle-layer.js';
import { SOFT } from './wall-dipoles.js';

/**
 * Triangles closer than so many of their longest edges are integrated in closed form. What a box lets out is small beside
 * what its walls hold, so that it takes more.
 */
const NEAR = { open: 1.7, vented: 3, closed: 3 };

/**
 * Where a triangle is near a pixel, takes away what its three edge midpoints gave as point dipoles with the kernel
 * n·d·(1/r³ + k²/(2r)) and puts the closed form in its place: linear jumps in the first term, their mean in the second.
 * The rest of the kernel is smooth and stays.
 *
 * @param half k²/2
 */
export function addNearFieldCorrection(
  { surface, behind }: Pick<WaveProblem, 'surface' | 'behind'>,
  { across, toward, level, images }: SectionImages,
  half: Complex,
  grid: SectionGrid,
  sum: ComplexArray
): void {
  const { points, triangles } = surface.mesh;
  const frames = triangleFrames(points, triangles, surface.normal);
  const near = NEAR[behind];
  const at = new Float64Array(3);
  const layer = new Float64Array(LAYER);
  for (let t = 0; t < surface.area.length; t++) {
    const corners = triangles.subarray(3 * t, 3 * t + 3);
    const centre = [0, 1, 2].map((d) => corners.reduce((s, node) => s + points[3 * node + d] / 3, 0));
    const longest = Math.max(
      ...[0, 1, 2].map((i) => distance(points, 3 * corners[i], 3 * corners[(i + 1) % 3]))
    );
    for (const image of images) {
      const { sign, shift } = image;
      // the section as the meshed part sees it, which is mirrored back in place of the triangle
      at[toward] = sign[toward] * (level - shift[toward]);
      const reach2 = (near * longest) ** 2 - (at[toward] - centre[toward]) ** 2;
      if (reach2 <= 0) continue;
      const place = (axis: number) => sign[axis] * centre[axis] + shift[axis];
      const pixels = pixelsWithin(grid, place(across), place(2), Math.sqrt(reach2));
      for (let row = pixels.firstRow; row <= pixels.lastRow; row++)
        for (let column = pixels.firstColumn; column <= pixels.lastColumn; column++) {
          at[across] = sign[across] * (columnAt(grid, column) - shift[across]);
          at[2] = sign[2] * (rowAt(grid, row) - shift[2]);
          if ((at[across] - centre[across]) ** 2 + (at[2] - centre[2]) ** 2 > reach2) continue;
          triangleLayer(frames, t, at[0], at[1], at[2], layer);
          const { re, im } = correction(surface, layer, t, at, image, half);
          sum.re[row * grid.columns + column] += re;
          sum.im[row * grid.columns + column] += im;
        }
    }
  }
}

/** What the closed form of one triangle differs by from its three edge midpoints. */
function correction(
  { mesh: { points, triangles }, area, normal }: Surface,
  layer: Float64Array,
  t: number,
  at: Float64Array,
  { re, im }: SectionImage,
  half: Complex
): Complex {
  const [x, y, z] = at;
  const o = 3 * t;
  const sum: Complex = { re: 0, im: 0 };
  for (let i = 0; i < 3; i++) {
    const own = triangles[o + i];
    const next = triangles[o + ((i + 1) % 3)];
    const dx = x - (points[3 * own] + points[3 * next]) / 2;
    const dy = y - (points[3 * own + 1] + points[3 * next + 1]) / 2;
    const dz = z - (points[3 * own + 2] + points[3 * next + 2]) / 2;
    const r2 = dx * dx + dy * dy + dz * dz + SOFT;
    const height = dx * normal[o] + dy * normal[o + 1] + dz * normal[o + 2];
    // what the midpoint gave with half of either end's jump, and what the corner's hat gives in truth, both times 4π
    const point = (height * area[t]) / (6 * Math.sqrt(r2));
    const takenRe = point * (1 / r2 + half.re);
    const takenIm = point * half.im;
    const putRe = layer[i] + (half.re * layer[3]) / 3;
    const putIm = (half.im * layer[3]) / 3;
    const jumpRe = re[own] + re[next];
    const jumpIm = im[own] + im[next];
    sum.re += putRe * re[own] - putIm * im[own] - takenRe * jumpRe + takenIm * jumpIm;
    sum.im += putRe * im[own] + putIm * re[own] - takenRe * jumpIm - takenIm * jumpRe;
  }
  return { re: sum.re / (4 * Math.PI), im: sum.im / (4 * Math.PI) };
}

/** The rows and columns of a grid whose middles lie within a square about a place. */
function pixelsWithin(
  { left, right, bottom, top, columns, rows }: SectionGrid,
  across: Metres,
  up: Metres,
  reach: Metres
) {
  const wide = (right - left) / columns;
  const high = (top - bottom) / rows;
  return {
    firstColumn: Math.max(0, Math.ceil((across - reach - left) / wide - 0.5)),
    lastColumn: Math.min(columns - 1, Math.floor((across + reach - left) / wide - 0.5)),
    firstRow: Math.max(0, Math.ceil((top - up - reach) / high - 0.5)),
    lastRow: Math.min(rows - 1, Math.floor((top - up + reach) / high - 0.5))
  };
}

function distance(points: Float64Array, p: number, q: number): Metres {
  return Math.hypot(points[p] - points[q], points[p + 1] - points[q + 1], points[p + 2] - points[q + 2]);
}
