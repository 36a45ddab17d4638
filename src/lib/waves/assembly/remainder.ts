import { complexArray, type ComplexArray } from '../../numeric/complex-array.js';
import type { NodeQuadrature, Surface } from '../mesh/surface.js';
import type { Image } from '../mesh/symmetry.js';
import { kernelTable, type KernelTable } from './kernel-table.js';

/**
 * What the smooth rest of the operator needs to know of every pair of quadrature points, computed once per geometry:
 * for p ≤ q and every image three numbers one after the other: distance/reach, −n·n′/(4π) and −(n·d)(n′·d)/(4πr²).
 */
export interface PointPairs {
  data: Float64Array;
  points: number;
  /** The largest distance, in metres. */
  reach: number;
  /** The largest distance within the surface itself, without its reflections. */
  size: number;
}

export function pointPairs({ images, copies, quadrature: { points, normals } }: Surface): PointPairs {
  const count = points.length / 3;
  const data = new Float64Array(3 * images.length * ((count * (count + 1)) / 2));
  const reach = 2 * halfDiameter(points, images);
  let o = 0;
  for (let p = 0; p < 3 * count; p += 3)
    for (let q = p; q < 3 * count; q += 3)
      for (const { sign, shift } of images) {
        let square = 0;
        let own = 0;
        let other = 0;
        let dot = 0;
        for (let d = 0; d < 3; d++) {
          const step = points[p + d] - shift[d] - sign[d] * points[q + d];
          const mirrored = sign[d] * normals[q + d];
          square += step * step;
          own += normals[p + d] * step;
          other += mirrored * step;
          dot += normals[p + d] * mirrored;
        }
        data[o++] = Math.sqrt(square) / reach;
        data[o++] = -dot / (4 * Math.PI);
        data[o++] = square > 0 ? (-own * other) / (4 * Math.PI * square) : 0;
      }
  return { data, points: count, reach, size: 2 * halfDiameter(points, images.slice(0, copies)) };
}

/** A bound on half the largest distance within all images. */
function halfDiameter(points: Float64Array, images: readonly Image[]): number {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const { sign, shift } of images)
    for (let i = 0; i < points.length; i++) {
      const d = i % 3;
      const x = sign[d] * points[i] + shift[d];
      low[d] = Math.min(low[d], x);
      high[d] = Math.max(high[d], x);
    }
  const [x, y, z] = high.map((end, d) => (end - low[d]) / 2);
  return Math.hypot(x, y, z) * (1 + 1e-9);
}

/**
 * Adds to `matrix` (row after row, the upper triangle j ≥ i is made) of every class
 * ∫∫ φ_i·φ_j·∂²/∂n∂n′ [(e^{−jkr} − 1 + jkr + k²r²/2)/(4πr)], by the quadrature of `surface.ts`. The kernel is continuous, so
 * that no pair needs care. With the same quadrature in the far field energy is kept exactly (docs/models/wave-solution.md).
 */
export function addRemainder(
  surface: Surface,
  pairs: PointPairs,
  k: number,
  loss: number,
  matrices: readonly (ComplexArray | null)[]
): void {
  const table = kernelTable(k, loss, pairs.reach);
  const used = [...matrices.keys()].filter((c) => matrices[c] !== null);
  const kernels = kernelArrays(used.length, pairs.points ** 2);
  const characters = used.map((c) => surface.classes[c].character);
  fillKernels(pairs, table, characters, kernels);
  used.forEach((c, i) => weigh(surface.quadrature, surface.classes[c].nodes, kernels[i], matrices[c]!));
}

let spare: WeakRef<ComplexArray[]> | null = null;

/** Arrays for the kernels of one frequency, with anything in them; those of the frequency before, unless their memory was wanted. */
function kernelArrays(count: number, length: number): ComplexArray[] {
  const before = spare?.deref();
  if (before && before.length >= count && before[0].re.length === length) return before.slice(0, count);
  const arrays = Array.from({ length: count }, () => complexArray(length));
  spare = new WeakRef(arrays);
  return arrays;
}

function fillKernels(
  { data, points }: PointPairs,
  { values, steps }: KernelTable,
  characters: Float64Array[],
  kernels: ComplexArray[]
): void {
  const images = characters[0].length;
  const pair = new Float64Array(2 * images);
  let o = 0;
  for (let p = 0; p < points; p++)
    for (let q = p; q < points; q++) {
      for (let g = 0; g < images; g++, o += 3) {
        const x = data[o] * steps;
        const cell = x | 0;
        const share = x - cell;
        const v = 4 * cell;
        const a = data[o + 1];
        const b = data[o + 2];
        const re = a * values[v] + b * values[v + 2];
        const im = a * values[v + 1] + b * values[v + 3];
        pair[2 * g] = re + share * (a * values[v + 4] + b * values[v + 6] - re);
        pair[2 * g + 1] = im + share * (a * values[v + 5] + b * values[v + 7] - im);
      }
      for (let c = 0; c < kernels.length; c++) {
        const character = characters[c];
        let re = 0;
        let im = 0;
        for (let g = 0; g < images; g++) {
          re += character[g] * pair[2 * g];
          im += character[g] * pair[2 * g + 1];
        }
        const kernel = kernels[c];
        kernel.re[p * points + q] = re;
        kernel.im[p * points + q] = im;
        kernel.re[q * points + p] = re;
        kernel.im[q * points + p] = im;
      }
    }
}

/** matrix += W·K·Wᵀ for the rows of the quadrature that belong to unknowns. */
function weigh(
  quadrature: NodeQuadrature,
  nodes: Int32Array,
  kernel: ComplexArray,
  matrix: ComplexArray
): void {
  const { start, point, weight, points } = quadrature;
  const count = points.length / 3;
  const n = nodes.length;
  const rowRe = new Float64Array(count);
  const rowIm = new Float64Array(count);
  for (let i = 0; i < n; i++) {
    rowRe.fill(0);
    rowIm.fill(0);
    const last = start[nodes[i] + 1];
    let e = start[nodes[i]];
    for (; e + 4 <= last; e += 4) addFour(kernel, quadrature, e, rowRe, rowIm);
    for (; e < last; e++) addRow(kernel, point[e] * count, weight[e], rowRe, rowIm);
    for (let j = i; j < n; j++) {
      let re = 0;
      let im = 0;
      for (let e = start[nodes[j]], last = start[nodes[j] + 1]; e < last; e++) {
        const w = weight[e];
        const p = point[e];
        re += w * rowRe[p];
        im += w * rowIm[p];
      }
      matrix.re[i * n + j] += re;
      matrix.im[i * n + j] += im;
    }
  }
}

/** To a row, adds w times a row of the kernel. */
function addRow(
  { re, im }: ComplexArray,
  from: number,
  w: number,
  toRe: Float64Array,
  toIm: Float64Array
): void {
  for (let q = 0; q < toRe.length; q++) {
    toRe[q] += w * re[from + q];
    toIm[q] += w * im[from + q];
  }
}

/** The same for four rows of the kernel, from the entry `e` of the quadrature on. */
function addFour(
  { re, im }: ComplexArray,
  { point, weight }: NodeQuadrature,
  e: number,
  toRe: Float64Array,
  toIm: Float64Array
): void {
  const count = toRe.length;
  const p0 = point[e] * count;
  const p1 = point[e + 1] * count;
  const p2 = point[e + 2] * count;
  const p3 = point[e + 3] * count;
  const w0 = weight[e];
  const w1 = weight[e + 1];
  const w2 = weight[e + 2];
  const w3 = weight[e + 3];
  for (let q = 0; q < count; q++) {
    toRe[q] += w0 * re[p0 + q] + w1 * re[p1 + q] + w2 * re[p2 + q] + w3 * re[p3 + q];
    toIm[q] += w0 * im[p0 + q] + w1 * im[p1 + q] + w2 * im[p2 + q] + w3 * im[p3 + q];
  }
}
