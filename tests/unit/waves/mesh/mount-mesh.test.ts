import { describe, expect, it } from 'vitest';
import type { Mount } from '../../../../src/lib/acoustics/mounts/mount.js';
import { ACCURACY } from '../../../../src/lib/waves/mesh/accuracy.js';
import { mountMesh } from '../../../../src/lib/waves/mesh/mount-mesh.js';
import { DEMO, ovalIn } from '../../../helpers/demo-installations.js';
import { C } from '../wave-cases.js';

function longestSide({ points, triangles }: { points: Float64Array; triangles: Int32Array }): number {
  let longest = 0;
  for (let t = 0; t < triangles.length; t += 3)
    for (let i = 0; i < 3; i++) {
      const [a, b] = [3 * triangles[t + i], 3 * triangles[t + ((i + 1) % 3)]];
      const step = [0, 1, 2].map((d) => Math.abs(points[a + d] - points[b + d]));
      longest = Math.max(longest, ...step);
    }
  return longest;
}

describe('mountMesh', () => {
  for (const [name, installation] of Object.entries(DEMO))
    for (const accuracy of ['draft', 'full'] as const)
      it(`follows the wavelength: ${name}, ${accuracy}`, () => {
        const { mesh, highest, pistons } = mountMesh(installation, C, ACCURACY[accuracy]);
        expect(highest).toBeGreaterThanOrEqual(ACCURACY[accuracy].highest);
        expect(highest).toBeLessThanOrEqual(ACCURACY[accuracy].reach);
        // rings of an ellipse are zipped: a cross edge may be longer than the spacing
        const slack = name === 'round plate' ? 1.5 : 1 + 1e-9;
        expect(longestSide(mesh)).toBeLessThanOrEqual((slack * C) / (highest * ACCURACY[accuracy].perWave));
        expect(mesh.points.length / 3).toBeLessThan(1.2 * ACCURACY[accuracy].budget);
        expect(pistons.map(({ middle }) => middle)).toEqual([[0, 0, 0]]);
      });

  it('puts the cone where the mount has it, turned as it lies', () => {
    const plate: Mount = {
      kind: 'plate',
      shape: 'rectangle',
      length: 0.15,
      width: 0.1,
      offset: [0.02, -0.01]
    };
    const [piston] = mountMesh(ovalIn(plate, 90), C, ACCURACY.draft).pistons;
    expect(piston.middle).toEqual([0.02, -0.01, 0]);
    const cone = ovalIn(plate).speaker.cone;
    if (cone.shape === 'round' || piston.outline.shape === 'round')
      throw new Error('the oval speaker has an oval cone');
    expect([piston.outline.length, piston.outline.width]).toEqual([cone.width, cone.length]);
  });

  it('solves a large mount to a lower frequency, within the budget', () => {
    const plate: Mount = { kind: 'plate', shape: 'rectangle', length: 1, width: 0.7, offset: [0, 0] };
    const { mesh, highest } = mountMesh(ovalIn(plate), C, ACCURACY.full);
    expect(highest).toBeLessThan(5000);
    expect(highest).toBeGreaterThan(1000);
    expect(mesh.points.length / 3).toBeLessThan(1.1 * ACCURACY.full.budget);
  });

  it('refuses a strip so slender that no mesh fits it', () => {
    const strip: Mount = { kind: 'plate', shape: 'rectangle', length: 3, width: 0.003, offset: [0, 0] };
    const frame = { shape: 'rectangle', length: 0.003, width: 0.002 } as const;
    const installation = { ...ovalIn(strip), speaker: { ...ovalIn(strip).speaker, frame, cone: frame } };
    expect(() => mountMesh(installation, C, ACCURACY.full)).toThrow(
      /too large or too slender for the wave solution: make its longest side shorter/
    );
  });

  it('lets a chassis meet the walls in two sheets that lap by one row', () => {
    const shell: Mount = {
      kind: 'shell',
      length: 0.1,
      width: 0.034,
      height: 0.035,
      ends: 'closed',
      offset: 0,
      chassis: { height: 0.01, slit: 0.001, ends: 0.001, depth: 0.001, fill: 0 }
    };
    const { mesh, patches, chambers } = mountMesh(ovalIn(shell), C, ACCURACY.draft);
    const heights = [0, 1].map((sheet) => [
      ...new Set(
        [...mesh.sheets!.keys()].filter((i) => mesh.sheets![i] === sheet).map((i) => mesh.points[3 * i + 2])
      )
    ]);
    const [above, skirt] = heights.map((all) => all.toSorted((a, b) => a - b));
    expect(above[0]).toBe(-0.025);
    expect(above.at(-1)).toBe(0);
    expect(skirt[0]).toBe(-0.035);
    // the wall above the chassis is there twice, as far as its first row
    expect(skirt.filter((z) => z > -0.025)).toEqual([above[1]]);
    expect(patches).toHaveLength(2);
    expect(chambers).toHaveLength(1);
  });

  it('meshes coarser what has lost its planes of symmetry to an opening', () => {
    const plate: Mount = {
      kind: 'plate',
      shape: 'rectangle',
      length: 0.15,
      width: 0.1,
      offset: [0.02, 0.01]
    };
    const leak = { gap: 1e-4, length: 0.13, depth: 0.001 };
    const [bare, leaky] = [plate, { ...plate, leak }].map((mount) =>
      mountMesh(ovalIn(mount), C, ACCURACY.full)
    );
    expect(bare.mesh.mirrors).toHaveLength(2);
    expect(bare.highest).toBe(10000);
    expect(leaky.mesh.mirrors).toHaveLength(0);
    expect(leaky.highest).toBeLessThan(10000);
    expect(leaky.mesh.points.length / 3).toBeLessThan(1.7 * ACCURACY.full.budget);
  });
});
