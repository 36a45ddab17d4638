import { describe, expect, it } from 'vitest';
import { soundSpeed } from '../../../src/lib/acoustics/air.js';
import { usualAbove } from '../../../src/lib/acoustics/mounts/board.js';
import type { Installation } from '../../../src/lib/acoustics/installation.js';
import { straightCut } from '../../../src/lib/drawing/cut.js';
import { sectionOf } from '../../../src/lib/drawing/section.js';
import { standingOf } from '../../../src/lib/drawing/standing.js';
import { ACCURACY } from '../../../src/lib/waves/mesh/accuracy.js';
import { mountMesh } from '../../../src/lib/waves/mesh/mount-mesh.js';
import { AIR, DEMO, ovalIn } from '../../helpers/demo-installations.js';

function over(installation: Installation, facing: 'up' | 'down'): Installation {
  const { speaker, mount } = installation;
  return { ...installation, board: { facing, above: usualAbove(speaker, mount, facing) } };
}

describe('a section as it stands', () => {
  it('lies in the hand as it is', () => {
    const section = sectionOf(DEMO['cab body']);
    expect(standingOf(DEMO['cab body'], section)).toEqual({
      down: 1,
      right: 1,
      board: null,
      bounds: section.bounds
    });
  });

  it('has its board where the wave solution has it', () => {
    for (const [name, installation] of Object.entries(DEMO))
      for (const facing of ['up', 'down'] as const) {
        const one = over(installation, facing);
        const { mesh } = mountMesh(one, soundSpeed(AIR), ACCURACY.draft);
        const wall = mesh.mirrors.find(({ axis, kind }) => axis === 2 && kind === 'wall')!;
        const { down, board } = standingOf(one, sectionOf(one));
        // The mesh counts up from the speaker's front, the drawing down.
        expect(board!.at / 1000, `${name}, ${facing}`).toBeCloseTo(-down * wall.at, 9);
        expect(board!.at - board!.lowest, `${name}, ${facing}`).toBeCloseTo(1000 * one.board!.above, 9);
      }
  });

  it('keeps above its board, magnet and all', () => {
    for (const installation of Object.values(DEMO))
      for (const facing of ['up', 'down'] as const) {
        const one = over(installation, facing);
        const { board, bounds } = standingOf(one, sectionOf(one));
        expect(bounds.bottom).toBeLessThan(board!.at);
        expect(bounds.top).toBeLessThan(bounds.bottom);
      }
  });

  it('turned over about its length keeps left and right along it, and changes them across', () => {
    const aside = ovalIn({
      kind: 'plate',
      shape: 'rectangle',
      length: 0.15,
      width: 0.1,
      offset: [0.03, 0.02]
    });
    for (const plane of ['length', 'width'] as const) {
      const section = sectionOf(aside, straightCut(plane));
      const { right, bounds } = standingOf(over(aside, 'down'), section);
      expect(right).toBe(plane === 'length' ? 1 : -1);
      expect([bounds.left, bounds.right]).toEqual(
        plane === 'length'
          ? [section.bounds.left, section.bounds.right]
          : [-section.bounds.right, -section.bounds.left]
      );
    }
  });
});
