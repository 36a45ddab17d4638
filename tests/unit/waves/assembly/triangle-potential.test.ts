import { describe, it } from 'vitest';
import { gaussLegendre } from '../../../../src/lib/numeric/gauss-legendre.js';
import { triangleFrames, trianglePotential } from '../../../../src/lib/waves/assembly/triangle-potential.js';
import { close } from '../../../helpers/close.js';

const corners = Float64Array.of(0, 0, 0, 1, 0.1, 0.2, 0.3, 0.9, -0.1);
const triangles = Int32Array.of(0, 1, 2);
const [u, v] = [corners.subarray(3, 6), corners.subarray(6, 9)];
const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
const twice = Math.hypot(...n);
const frames = triangleFrames(
  corners,
  triangles,
  Float64Array.from(n, (x) => x / twice)
);

/** ∫ dS/R by Gauss–Legendre in Duffy's coordinates. */
function numeric(x: number, y: number, z: number, points = 200): number {
  const { nodes, weights } = gaussLegendre(points);
  let sum = 0;
  for (let i = 0; i < points; i++)
    for (let j = 0; j < points; j++) {
      const a = (1 + nodes[i]) / 2;
      const b = (a * (1 + nodes[j])) / 2;
      const [p, q] = [a - b, b];
      const r = Math.hypot(x - p * u[0] - q * v[0], y - p * u[1] - q * v[1], z - p * u[2] - q * v[2]);
      sum += (weights[i] * weights[j] * a * twice) / 4 / r;
    }
  return sum;
}

describe('trianglePotential against quadrature', () => {
  for (const [x, y, z] of [
    [2, 1, 3],
    [0.4, 0.3, 0.5],
    [0.4, 0.3, -0.5],
    [-1, -1, 0.1],
    [5, -4, 2]
  ])
    it(`at (${x}, ${y}, ${z})`, () => {
      close(trianglePotential(frames, 0, x, y, z), numeric(x, y, z), {
        rel: 1e-10,
        because: 'smooth off the triangle'
      });
    });

  it('in the plane of the triangle beside it', () => {
    const at = [0, 1, 2].map((d) => 1.2 * u[d] + 0.9 * v[d]) as [number, number, number];
    close(trianglePotential(frames, 0, ...at), numeric(...at), {
      rel: 1e-10,
      because: 'smooth off the triangle'
    });
  });

  it('at a corner, where the coordinates take the singularity away', () => {
    close(trianglePotential(frames, 0, 0, 0, 0), numeric(0, 0, 0), { rel: 1e-10, because: 'Duffy' });
  });

  it('inside, as the sum of the parts into which the point cuts the triangle', () => {
    const at = [0, 1, 2].map((d) => 0.3 * u[d] + 0.25 * v[d]) as [number, number, number];
    const cut = Float64Array.of(...corners, ...at);
    const parts = Int32Array.of(0, 1, 3, 1, 2, 3, 2, 0, 3);
    const normals = Float64Array.from({ length: 9 }, (_, i) => n[i % 3] / twice);
    const pieces = triangleFrames(cut, parts, normals);
    const sum = [0, 1, 2].reduce((all, t) => all + trianglePotential(pieces, t, ...at), 0);
    close(trianglePotential(frames, 0, ...at), sum, { rel: 1e-12, because: 'the same integral' });
  });
});
