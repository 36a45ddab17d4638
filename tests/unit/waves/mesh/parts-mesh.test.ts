import { describe, expect, it } from 'vitest';
import { boxParts } from '../../../../src/lib/waves/mesh/mount-parts.js';
import { partsMesh } from '../../../../src/lib/waves/mesh/parts-mesh.js';
import { surfaceOf } from '../../../../src/lib/waves/mesh/surface.js';
import {
  survivingMirrors,
  type Panel,
  type SurfacePart
} from '../../../../src/lib/waves/mesh/surface-part.js';
import type { TriangleMesh } from '../../../../src/lib/waves/mesh/triangle-mesh.js';
import { close } from '../../../helpers/close.js';
import { unfoldMesh } from '../../../helpers/unfold-mesh.js';

const H = [0.012, 0.012, 0.012] as const;
const SHELL = boxParts([0.15, 0.03, 0.045], { sides: true, ends: true, floor: false });
const forms: Record<string, SurfacePart[]> = {
  plate: boxParts([0.15, 0.1, 0], { sides: false, ends: false, floor: false }),
  ellipse: [{ shape: 'ellipse', semiAxes: [0.05, 0.03] }],
  shell: SHELL,
  'open shell': boxParts([0.15, 0.03, 0.045], { sides: true, ends: false, floor: false }),
  box: boxParts([0.042, 0.029, 0.017], { sides: true, ends: true, floor: true })
};

/** Each triangle as its corners in order, from the least one on, in whole picometres. */
function triangles({ points, triangles: nodes }: TriangleMesh): string[] {
  const place = (node: number) =>
    [...points.subarray(3 * node, 3 * node + 3)].map((x) => Math.round(x * 1e12) + 0).join();
  const all: string[] = [];
  for (let t = 0; t < nodes.length; t += 3) {
    const corners = [0, 1, 2].map((i) => place(nodes[t + i]));
    const first = corners.indexOf([...corners].sort()[0]);
    all.push([0, 1, 2].map((i) => corners[(first + i) % 3]).join(' '));
  }
  return all.sort();
}

describe('partsMesh', () => {
  for (const [name, parts] of Object.entries(forms))
    it(`is the same mesh as quarter, as half and as whole, diagonals and normals too: ${name}`, () => {
      const mirrors = survivingMirrors(parts);
      expect(mirrors).toHaveLength(2);
      const quarter = partsMesh(parts, H);
      expect(quarter.mirrors).toEqual(mirrors);
      const whole = triangles(partsMesh(parts, H, []));
      expect(whole).toHaveLength((4 * quarter.triangles.length) / 3);
      expect(triangles(unfoldMesh(quarter))).toEqual(whole);
      for (const mirror of mirrors)
        expect(triangles(unfoldMesh(partsMesh(parts, H, [mirror])))).toEqual(whole);
    });

  it('meshes a half where a part breaks a mirror, and the whole where none is left', () => {
    const [roof, left, right, far] = SHELL;
    const areas = { roof: 0.15 * 0.03, side: 0.15 * 0.045, end: 0.03 * 0.045 };
    for (const [parts, count, area] of [
      [[roof, left, right, far], 1, areas.roof + 2 * areas.side + areas.end],
      [[roof, left, far], 0, areas.roof + areas.side + areas.end]
    ] as const) {
      const surface = surfaceOf(partsMesh(parts, H));
      expect(surface.mesh.mirrors).toHaveLength(count);
      const sum = surface.area.reduce((a, b) => a + b, 0);
      close(surface.copies * sum, area, { rel: 1e-12, because: 'flat walls' });
    }
  });

  it('crowds towards the free end and not towards the closed one', () => {
    const [roof, left, right, far] = SHELL;
    const { points } = partsMesh([roof, left, right, far], H);
    const x = [...new Set(points.filter((_, i) => i % 3 === 0))].sort((a, b) => a - b);
    expect(x[1] - x[0]).toBeLessThan(0.004);
    expect(x[x.length - 1] - x[x.length - 2]).toBeGreaterThan(0.008);
  });

  it('shares the nodes of a sheet that meets the walls of a shell half way down', () => {
    const sheet: Panel = {
      shape: 'panel',
      low: [-0.075, -0.015, -0.02],
      high: [0.075, 0.015, -0.02],
      facing: 1
    };
    const { points, triangles: nodes } = partsMesh([...SHELL, sheet], H, []);
    const uses = new Map<string, number>();
    for (let t = 0; t < nodes.length; t += 3)
      for (let i = 0; i < 3; i++) {
        const edge = [nodes[t + i], nodes[t + ((i + 1) % 3)]].sort((a, b) => a - b).join();
        uses.set(edge, (uses.get(edge) ?? 0) + 1);
      }
    // free edges lie along the bottom only; where the sheet meets a wall three triangles have an edge in common
    const ofEdges = [...uses].map(([edge, times]) => ({
      times,
      z: edge.split(',').map((node) => points[3 * Number(node) + 2])
    }));
    for (const { times, z } of ofEdges.filter((edge) => edge.times === 1))
      expect([times, ...z]).toEqual([1, -0.045, -0.045]);
    const shared = ofEdges.filter(({ times }) => times === 3);
    expect(shared.length).toBeGreaterThan(20);
    for (const { z } of shared) expect(z).toEqual([-0.02, -0.02]);
  });
});
