import { describe, expect, it } from 'vitest';
import { boxParts } from '../../../../src/lib/waves/mesh/mount-parts.js';
import {
  cutPanels,
  freeEnds,
  survivingMirrors,
  type Panel,
  type SurfacePart
} from '../../../../src/lib/waves/mesh/surface-part.js';

const SHELL = boxParts([0.15, 0.03, 0.045], { sides: true, ends: true, floor: false });
const [roof, left, right, far, near] = SHELL;
const axes = (parts: SurfacePart[]) => survivingMirrors(parts).map(({ axis }) => axis);

describe('survivingMirrors', () => {
  it('are both of a plate, an ellipse, a shell and a box', () => {
    expect(axes([roof])).toEqual([0, 1]);
    expect(axes([{ shape: 'ellipse', semiAxes: [0.05, 0.03] }])).toEqual([0, 1]);
    expect(axes(SHELL)).toEqual([0, 1]);
    expect(axes(boxParts([0.04, 0.03, 0.02], { sides: true, ends: true, floor: true }))).toEqual([0, 1]);
  });

  it('lose the plane that a part breaks, and keep the other', () => {
    expect(axes([roof, left, right, far])).toEqual([1]);
    expect(axes([roof, left, far, near])).toEqual([0]);
    expect(axes([roof, left, far])).toEqual([]);
  });

  it('ask which way a part looks', () => {
    const turned: Panel = { ...near, facing: 1 };
    expect(axes([roof, left, right, far, turned])).toEqual([1]);
  });
});

describe('cutPanels', () => {
  it('keeps what lies on the positive side', () => {
    const kept = cutPanels(SHELL, survivingMirrors(SHELL));
    expect(kept.map(({ low }) => low)).toEqual([
      [0, 0, 0],
      [0, 0.015, -0.045],
      [0.075, 0, -0.045]
    ]);
    expect(cutPanels(SHELL, [])).toEqual(SHELL);
  });
});

describe('freeEnds', () => {
  it('are the places of edges that no other part holds', () => {
    expect(freeEnds([roof], 0)).toEqual([-0.075, 0.075]);
    expect(freeEnds(SHELL, 0)).toEqual([]);
    expect(freeEnds(SHELL, 2)).toEqual([-0.045]);
    expect(freeEnds([roof, left, right, far], 0)).toEqual([-0.075]);
  });

  it('count an edge that lies within another part as folded', () => {
    const sheet: Panel = {
      shape: 'panel',
      low: [-0.075, -0.015, -0.02],
      high: [0.075, 0.015, -0.02],
      facing: 1
    };
    expect(freeEnds([...SHELL, sheet], 0)).toEqual([]);
    expect(freeEnds([...SHELL, sheet], 1)).toEqual([]);
  });
});
