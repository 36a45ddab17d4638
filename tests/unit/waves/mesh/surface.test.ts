import { describe, expect, it } from 'vitest';
import { surfaceOf } from '../../../../src/lib/waves/mesh/surface.js';
import { unfoldMesh } from '../../../helpers/unfold-mesh.js';
import { close } from '../../../helpers/close.js';
import { coarse } from '../wave-cases.js';

const areas = {
  plate: 0.15 * 0.1,
  round: Math.PI * 0.05 ** 2,
  shell: 0.152 * 0.03 + 2 * 0.152 * 0.045 + 2 * 0.03 * 0.045,
  'open shell': 0.152 * 0.03 + 2 * 0.152 * 0.045,
  box: 2 * (0.042 * 0.029 + 0.042 * 0.017 + 0.029 * 0.017)
};

for (const form of Object.keys(areas) as (keyof typeof areas)[])
  describe(`a ${form}`, () => {
    const surface = surfaceOf(coarse(form));
    const whole = surfaceOf(unfoldMesh(surface.mesh));
    const sum = (x: Float64Array) => x.reduce((a, b) => a + b, 0);

    it('has its area, in the quarter and in the whole', () => {
      const rel = form === 'round' ? 0.02 : 1e-12;
      close(4 * sum(surface.area), areas[form], {
        rel,
        because: 'flat walls; a coarse rim is a polygon within the circle'
      });
      close(sum(whole.area), 4 * sum(surface.area), { rel: 1e-12, because: 'mirrored copies' });
    });

    it('has consistent normals: neighbours run along a shared edge in opposite directions', () => {
      const { triangles } = whole.mesh;
      const directed = new Set<string>();
      for (let t = 0; t < triangles.length; t += 3)
        for (let i = 0; i < 3; i++) {
          const key = `${triangles[t + i]} ${triangles[t + ((i + 1) % 3)]}`;
          expect(directed.has(key)).toBe(false);
          directed.add(key);
        }
    });

    it(`is ${form === 'box' ? 'closed' : 'open'}, with the front outward`, () => {
      expect(surface.open).toBe(form !== 'box');
      expect(whole.open).toBe(surface.open);
      const { points, normals } = whole.quadrature;
      for (let p = 0; p < points.length; p += 3) {
        const middle = form === 'box' ? -0.0085 : -1;
        const outward =
          points[p] * normals[p] + points[p + 1] * normals[p + 1] + (points[p + 2] - middle) * normals[p + 2];
        expect(outward).toBeGreaterThan(0);
      }
    });

    it('has curls that cancel on every triangle', () => {
      for (let t = 0; t < surface.area.length; t++)
        for (let d = 0; d < 3; d++) {
          const [a, b, c] = [0, 3, 6].map((i) => surface.curl[9 * t + i + d]);
          close(a + b + c, 0, { abs: 1e-12 * Math.abs(a) + 1e-9, because: 'rounding: the edges go round' });
        }
    });

    it('integrates hats times linear functions exactly', () => {
      const { start, point, weight, points } = whole.quadrature;
      const { mesh, area } = whole;
      const f = (x: number, y: number, z: number) => 1 + 3 * x - 2 * y + 5 * z;
      const exact = new Float64Array(mesh.points.length / 3);
      area.forEach((size, t) => {
        const at = [0, 1, 2].map((i) => mesh.triangles[3 * t + i]);
        const values = at.map((n) => f(mesh.points[3 * n], mesh.points[3 * n + 1], mesh.points[3 * n + 2]));
        const total = values[0] + values[1] + values[2];
        // ∫ λ_i·λ_j = area/12, or area/6 for i = j
        at.forEach((n, i) => (exact[n] += (size * (total + values[i])) / 12));
      });
      exact.forEach((value, i) => {
        let got = 0;
        let size = 0;
        for (let e = start[i]; e < start[i + 1]; e++) {
          const p = 3 * point[e];
          got += weight[e] * f(points[p], points[p + 1], points[p + 2]);
          size += weight[e];
        }
        // lumping is exact for the constant only; the gradient averages out where the triangles round a node are alike
        close(got, value, {
          abs: 0.05 * size,
          because: 'steps of 12 mm times a gradient of 6 per metre, half lumped'
        });
      });
      const total = (values: Float64Array) => values.reduce((a, b) => a + b, 0);
      const all = exact.map((_, i) => {
        let got = 0;
        for (let e = start[i]; e < start[i + 1]; e++) {
          const p = 3 * point[e];
          got += weight[e] * f(points[p], points[p + 1], points[p + 2]);
        }
        return got;
      });
      close(total(all), total(exact), {
        rel: 1e-12,
        because: 'the sum of the hats is 1: the rule is the trapezoid'
      });
    });
  });

describe('symmetry classes', () => {
  it('have no unknowns on free edges nor on the planes in which they are odd', () => {
    const { classes, mesh } = surfaceOf(coarse('plate'));
    expect(classes.map(({ odd }) => odd.map(({ axis }) => 'xyz'[axis]).join(''))).toEqual([
      '',
      'x',
      'y',
      'xy'
    ]);
    for (const { odd, nodes } of classes)
      for (const node of nodes) {
        const [x, y] = mesh.points.subarray(3 * node, 3 * node + 2);
        expect(x).toBeLessThan(0.075);
        expect(y).toBeLessThan(0.05);
        if (odd.some(({ axis }) => axis === 0)) expect(x).toBeGreaterThan(0);
        if (odd.some(({ axis }) => axis === 1)) expect(y).toBeGreaterThan(0);
      }
  });
});
