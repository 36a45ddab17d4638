import type { Metres } from '../../units.js';
import type { Axis, Mirror, Vector } from './symmetry.js';

/** A flat rectangle parallel to two axes. */
export interface Panel {
  shape: 'panel';
  /** Its least and its greatest coordinates; on the axis of its normal they are the same. */
  low: Vector;
  high: Vector;
  /** Whether its front looks along that axis or against it. */
  facing: 1 | -1;
  /** The sheet it belongs to, the first unless told: panels share nodes within a sheet only. */
  sheet?: number;
  /**
   * Whether it is meshed one row further up along z than it reaches, over the panel of another sheet that goes on there. Where three
   * panels meet, the jumps of two of them add up to that of the third: two sheets lie one upon the other in that row.
   */
  laps?: boolean;
  /** Whether only the nodes along its rim carry a jump: it lies upon a panel of another sheet, to which the rest belongs. */
  rim?: boolean;
}

/** A flat ellipse in z = 0 with its middle in the origin; its front looks along +z. */
export interface Ellipse {
  shape: 'ellipse';
  /** Along x and along y. */
  semiAxes: readonly [Metres, Metres];
}

/**
 * A part of a rigid surface without thickness. A mount is a list of them. Panels are folded together where they have an
 * edge in common, or where the edge of one lies in the other.
 */
export type SurfacePart = Panel | Ellipse;

/** The axis of a panel's normal. */
export function normalAxis({ low, high }: Panel): Axis {
  return low[0] === high[0] ? 0 : low[1] === high[1] ? 1 : 2;
}

/** The least and the greatest coordinate of some parts on an axis. */
export function extent(parts: readonly SurfacePart[], axis: Axis): [Metres, Metres] {
  const ends = parts.flatMap((part) => {
    if (part.shape === 'panel') return [part.low[axis], part.high[axis]];
    const half = axis === 2 ? 0 : part.semiAxes[axis];
    return [-half, half];
  });
  return [Math.min(...ends), Math.max(...ends)];
}

/** Of the planes x = 0 and y = 0 those in which the parts are symmetric: a part without its like beyond one breaks it. */
export function survivingMirrors(parts: readonly SurfacePart[]): Mirror[] {
  const panels = parts.filter((part) => part.shape === 'panel');
  return ([0, 1] as const)
    .filter((axis) => panels.every((panel) => panels.some((other) => isMirrored(panel, other, axis))))
    .map((axis) => ({ axis, at: 0, kind: 'symmetry' }));
}

function isMirrored(a: Panel, b: Panel, axis: Axis): boolean {
  const turned = normalAxis(a) === axis ? -a.facing : a.facing;
  return (
    b.facing === turned &&
    ([0, 1, 2] as const).every((d) =>
      d === axis
        ? b.low[d] === -a.high[d] && b.high[d] === -a.low[d]
        : b.low[d] === a.low[d] && b.high[d] === a.high[d]
    )
  );
}

/** What of some panels lies on the positive side of planes of symmetry. */
export function cutPanels(parts: readonly SurfacePart[], mirrors: readonly Mirror[]): Panel[] {
  let panels = parts.filter((part) => part.shape === 'panel');
  for (const { axis, at } of mirrors)
    panels = panels
      .filter(({ high }) => high[axis] > at)
      .map((panel) => {
        const low: [number, number, number] = [...panel.low];
        low[axis] = Math.max(low[axis], at);
        return { ...panel, low };
      });
  return panels;
}

/** Where on an axis the parts end freely: the places of the edges that lie in no other part. */
export function freeEnds(parts: readonly SurfacePart[], axis: Axis): Metres[] {
  const ends = new Set<Metres>();
  for (const part of parts) {
    if (part.shape === 'ellipse') {
      if (axis !== 2) for (const end of extent([part], axis)) ends.add(end);
      continue;
    }
    if (normalAxis(part) === axis) continue;
    for (const end of [part.low[axis], part.high[axis]]) {
      const within = (other: SurfacePart) =>
        other.shape === 'panel' &&
        ([0, 1, 2] as const).every((d) =>
          d === axis
            ? other.low[d] <= end && end <= other.high[d]
            : other.low[d] <= part.low[d] && part.high[d] <= other.high[d]
        );
      if (!parts.some((other) => other !== part && within(other))) ends.add(end);
    }
  }
  return [...ends];
}
