import { describe, expect, it } from 'vitest';
import { triangleFrames, trianglePotential } from '../../../../src/lib/waves/assembly/triangle-potential.js';
import { LAYER, triangleLayer } from '../../../../src/lib/waves/field/triangle-layer.js';
import { close } from '../../../helpers/close.js';

type Vector = [number, number, number];
const corners: Vector[] = [
  [0.2, -0.1, 0.3],
  [1.3, 0.2, 0.1],
  [0.4, 1.1, 0.5]
];
const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0]
];
const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const size = (a: Vector) => Math.hypot(...a);

const twice = cross(minus(corners[1], corners[0]), minus(corners[2], corners[0]));
const normal = twice.map((x) => x / size(twice)) as Vector;
const frames = triangleFrames(
  Float64Array.from(corners.flat()),
  Int32Array.of(0, 1, 2),
  Float64Array.from(normal)
);

function layerAt(at: Vector): Float64Array {
  const into = new Float64Array(LAYER);
  triangleLayer(frames, 0, ...at, into);
  return into;
}

/** A point over the triangle's plane: barycentric shares of its foot and the height. */
const over = (a: number, b: number, height: number): Vector =>
  [0, 1, 2].map(
    (d) => a * corners[0][d] + b * corners[1][d] + (1 - a - b) * corners[2][d] + height * normal[d]
  ) as Vector;

const places: [string, Vector][] = [
  ['over the middle', over(0.3, 0.4, 0.2)],
  ['below it', over(0.3, 0.4, -0.05)],
  ['over a corner', over(1, 0, 0.01)],
  ['over an edge', over(0.5, 0.5, 0.3)],
  ['beside it', over(1.7, -0.9, 0.1)],
  ['far away', over(5, -3, 4)]
];

describe('triangleLayer', () => {
  for (const [name, at] of places) {
    it(`of each hat is the integral, ${name}`, () => {
      // a fine rule of centroids, refined twice: Richardson
      const [coarse, fine] = [60, 120].map((n) => byCentroids(at, n));
      const into = layerAt(at);
      for (let i = 0; i < 3; i++)
        close(into[i], (4 * fine[i] - coarse[i]) / 3, {
          abs: name === 'over a corner' ? 0.05 : 2e-5,
          because: 'centroids err in second order; over a corner the peak is as wide as a cell'
        });
    });

    it(`gives height times potential, ${name}`, () => {
      const height = dot(minus(at, corners[0]), normal);
      close(layerAt(at)[3], height * trianglePotential(frames, 0, ...at), {
        rel: 1e-10,
        because: 'the same closed form in two places'
      });
    });
  }

  it('of all faces of a tetrahedron is 4π inside and nothing outside', () => {
    const tip: Vector = [0.7, 0.3, -0.9];
    const points = [...corners, tip];
    // seen from outside anticlockwise: the first face is turned, because the tip lies below it
    const faces = [0, 1, 2, 0, 3, 1, 1, 3, 2, 2, 3, 0];
    const normals = [0, 3, 6, 9].flatMap((f) => {
      const [a, b, c] = faces.slice(f, f + 3).map((node) => points[node]);
      const n = cross(minus(b, a), minus(c, a));
      return n.map((x) => x / size(n));
    });
    const all = triangleFrames(
      Float64Array.from(points.flat()),
      Int32Array.from(faces),
      Float64Array.from(normals)
    );
    const around = (at: Vector) => {
      let sum = 0;
      const into = new Float64Array(LAYER);
      for (let t = 0; t < 4; t++) {
        triangleLayer(all, t, ...at, into);
        sum += into[0] + into[1] + into[2];
      }
      return sum;
    };
    // the height over an outward face is negative inside
    const inside: Vector[] = [
      [0.65, 0.37, 0],
      [0.7, 0.3, -0.89]
    ];
    for (const at of inside) close(around(at), -4 * Math.PI, { rel: 1e-12, because: 'Gauss' });
    for (const [, at] of places)
      if (dot(minus(at, corners[0]), normal) > 0) close(around(at), 0, { abs: 1e-12, because: 'Gauss' });
  });

  it('is finite and the mean of both sides on the triangle, its edges and its corners', () => {
    for (const at of [over(0.3, 0.3, 0), over(0.5, 0.5, 0), over(1, 0, 0), over(2, -1, 0)])
      expect([...layerAt(at).subarray(0, 4)]).toEqual([0, 0, 0, 0]);
    const [above, below] = [layerAt(over(0.5, 0.5, 1e-7)), layerAt(over(0.5, 0.5, -1e-7))];
    for (let i = 0; i < 4; i++) close(above[i], -below[i], { abs: 1e-6, because: 'odd in the height' });
  });
});

/** d·∫ φ_i/R³ dS from n² equal pieces. */
function byCentroids(at: Vector, n: number): number[] {
  const sum = [0, 0, 0];
  const height = dot(minus(at, corners[0]), normal);
  const area = size(twice) / 2 / (n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n - i; j++)
      for (const up of [1, 2]) {
        if (up === 2 && i + j > n - 2) continue;
        const shares = [(i + up / 3) / n, (j + up / 3) / n];
        const hats = [...shares, 1 - shares[0] - shares[1]];
        const r = size(minus(over(shares[0], shares[1], 0), at));
        hats.forEach((hat, h) => (sum[h] += (height * hat * area) / r ** 3));
      }
  return sum;
}
