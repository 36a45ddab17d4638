import type { Surface } from '../mesh/surface.js';
import { isNear, nearDistance, nearInverse, nearPairs } from './near-pair.js';

/**
 * The parts of the matrix of a symmetry class that do not depend on frequency: A(k) = A0 + k²·A1 + remainder. Full
 * symmetric matrices over the unknowns of the class, row after row.
 */
export interface StaticMatrices {
  /** −Σ curl φ_i·curl φ_j·∫∫ 1/(4πr), in metres. */
  a0: Float64Array;
  /** ∫∫ n·n′·φ_i·φ_j/(4πr) + Σ curl φ_i·curl φ_j·∫∫ r/(8π), in m³. */
  a1: Float64Array;
}

/** Numbers a class sums up for a pair of triangles: three of 1/r, three of r, nine of the hats and one of their rest. */
const SUMS = 16;

/**
 * The hypersingular operator in the weak form of Maue and Nédélec (A. W. Maue, Z. Phys. 126 (1949) 601; S. A. Sauter and
 * C. Schwab, Boundary Element Methods, Springer 2011, §3.3.4, section from memory),
 * ∫∫ G·[k²·n·n′·φ_i·φ_j − curl φ_i·curl φ_j] with G = e^{−jkr}/(4πr), to second order in k: G ≈ (1/r − jk − k²r/2)/(4π), whose
 * constant falls out. By the rule of the edge midpoints with the hat functions; near pairs are then set right by what
 * `nearInverse` finds beyond it (the hats there lumped), and take r by six by six points.
 *
 * @param wanted which classes to make; null for the others
 */
export function staticMatrices(surface: Surface, wanted: readonly boolean[]): (StaticMatrices | null)[] {
  const { mesh, images, classes, area, normal } = surface;
  const nodes = mesh.points.length / 3;
  const used = [...classes.keys()].filter((c) => wanted[c]);
  const full = used.map(() => ({ a0: new Float64Array(nodes * nodes), a1: new Float64Array(nodes * nodes) }));
  const near = nearPairs(surface);
  const { middle, longest } = near.samples;
  const kappa = new Float64Array(9);
  const sums = new Float64Array(SUMS * used.length);
  for (let s = 0; s < area.length; s++)
    for (let t = s; t < area.length; t++) {
      sums.fill(0);
      for (let g = 0; g < images.length; g++) {
        const image = images[g];
        const sx = image.sign[0];
        const sy = image.sign[1];
        const sz = image.sign[2];
        const hx = image.shift[0];
        const hy = image.shift[1];
        const hz = image.shift[2];
        let inverse = 0;
        let distance = 0;
        for (let e = 0; e < 3; e++) {
          const m = 9 * s + 3 * e;
          const mx = middle[m] - hx;
          const my = middle[m + 1] - hy;
          const mz = middle[m + 2] - hz;
          for (let f = 0; f < 3; f++) {
            const n = 9 * t + 3 * f;
            const x = mx - sx * middle[n];
            const y = my - sy * middle[n + 1];
            const z = mz - sz * middle[n + 2];
            const r = Math.sqrt(x * x + y * y + z * z);
            const one = r > 1e-9 * longest[s] ? 1 / r : 0;
            kappa[3 * e + f] = one;
            inverse += one;
            distance += r;
          }
        }
        inverse /= 9;
        distance /= 9;
        let rest = 0;
        if (isNear(near.samples, s, t, image)) {
          const exact = nearInverse(near, area, s, t, image);
          rest = exact - inverse;
          inverse = exact;
          distance = nearDistance(near, s, t, image);
        }
        const determinant = sx * sy * sz;
        const dot =
          sx * normal[3 * s] * normal[3 * t] +
          sy * normal[3 * s + 1] * normal[3 * t + 1] +
          sz * normal[3 * s + 2] * normal[3 * t + 2];
        for (let c = 0; c < used.length; c++) {
          const character = classes[used[c]].character[g];
          const turn = character * determinant;
          const o = SUMS * c;
          sums[o] += turn * sx * inverse;
          sums[o + 1] += turn * sy * inverse;
          sums[o + 2] += turn * sz * inverse;
          sums[o + 3] += turn * sx * distance;
          sums[o + 4] += turn * sy * distance;
          sums[o + 5] += turn * sz * distance;
          const facing = character * dot;
          if (facing === 0) continue;
          for (let e = 0; e < 9; e++) sums[o + 6 + e] += facing * kappa[e];
          sums[o + 15] += facing * rest;
        }
      }
      for (let c = 0; c < used.length; c++) scatter(surface, s, t, sums, SUMS * c, full[c], nodes);
    }
  return classes.map(({ nodes: kept }, c) => {
    const at = used.indexOf(c);
    return at < 0 ? null : { a0: restrict(full[at].a0, nodes, kept), a1: restrict(full[at].a1, nodes, kept) };
  });
}

/** Adds what a pair of triangles contributes to their nodes, in both orders. */
function scatter(
  { mesh: { triangles }, area, curl }: Surface,
  s: number,
  t: number,
  sums: Float64Array,
  o: number,
  { a0, a1 }: StaticMatrices,
  nodes: number
): void {
  const weight = (area[s] * area[t]) / (4 * Math.PI);
  const h = o + 6;
  let total = 0;
  for (let e = 0; e < 9; e++) total += sums[h + e];
  for (let a = 0; a < 3; a++) {
    const i = triangles[3 * s + a];
    const ca = 9 * s + 3 * a;
    const row = sums[h + 3 * a] + sums[h + 3 * a + 1] + sums[h + 3 * a + 2];
    for (let b = 0; b < 3; b++) {
      const j = triangles[3 * t + b];
      const cb = 9 * t + 3 * b;
      const column = sums[h + b] + sums[h + 3 + b] + sums[h + 6 + b];
      // a hat is ½ at the middles of the two edges that meet in its corner; middle e lies opposite corner e
      const hats = (total - row - column + sums[h + 3 * a + b]) / 36 + sums[o + 15] / 9;
      const xx = curl[ca] * curl[cb];
      const yy = curl[ca + 1] * curl[cb + 1];
      const zz = curl[ca + 2] * curl[cb + 2];
      const zero = -weight * (xx * sums[o] + yy * sums[o + 1] + zz * sums[o + 2]);
      const one = weight * (hats + (xx * sums[o + 3] + yy * sums[o + 4] + zz * sums[o + 5]) / 2);
      a0[i * nodes + j] += zero;
      a1[i * nodes + j] += one;
      if (s === t) continue;
      a0[j * nodes + i] += zero;
      a1[j * nodes + i] += one;
    }
  }
}

function restrict(matrix: Float64Array, size: number, keep: Int32Array): Float64Array {
  const n = keep.length;
  const out = new Float64Array(n * n);
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) out[i * n + j] = matrix[keep[i] * size + keep[j]];
  return out;
}
