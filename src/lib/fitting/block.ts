import type { CubicMetres, Metres } from '../units.js';

export type Span = readonly [from: Metres, until: Metres];

/**
 * A box along the axes of the vehicle: x from its left end along its length, y from its middle line across, z from the lower edge of its
 * body up.
 */
export interface Block {
  x: Span;
  y: Span;
  z: Span;
}

/** What rounding may cost, in metres: things that touch do not overlap, and what is just as large fits. */
export const TOUCH: Metres = 1e-9;

export function spansOverlap(a: Span, b: Span): boolean {
  return a[0] < b[1] - TOUCH && b[0] < a[1] - TOUCH;
}

/** Whether two blocks have room in common; touching they have none. */
export function overlap(a: Block, b: Block): boolean {
  return spansOverlap(a.x, b.x) && spansOverlap(a.y, b.y) && spansOverlap(a.z, b.z);
}

export function contains(outer: Block, inner: Block): boolean {
  return (['x', 'y', 'z'] as const).every(
    (axis) => inner[axis][0] >= outer[axis][0] - TOUCH && inner[axis][1] <= outer[axis][1] + TOUCH
  );
}

export function lengthOf([from, until]: Span): Metres {
  return until - from;
}

export function volumeOf({ x, y, z }: Block): CubicMetres {
  return lengthOf(x) * lengthOf(y) * lengthOf(z);
}

/**
 * The volume that blocks take together, each place counted once: the sum over the cells of the grid that their faces make.
 *
 * @param blocks a few: the work grows with the third power of their number
 */
export function unionVolume(blocks: readonly Block[]): CubicMetres {
  const [xs, ys, zs] = (['x', 'y', 'z'] as const).map((axis) => cells(blocks.map((block) => block[axis])));
  let volume = 0;
  for (const x of xs)
    for (const y of ys)
      for (const z of zs)
        if (blocks.some((block) => contains(block, { x, y, z }))) volume += volumeOf({ x, y, z });
  return volume;
}

/** The spans between neighbouring ends. */
function cells(spans: readonly Span[]): Span[] {
  const ends = [...new Set(spans.flat())].sort((a, b) => a - b);
  return ends.slice(1).map((end, i) => [ends[i], end]);
}

/** What of a span is left between others, longest possible pieces, in order; pieces shorter than `least` are left out. */
export function spansBetween(whole: Span, taken: readonly Span[], least: Metres): Span[] {
  const free: Span[] = [];
  let from = whole[0];
  for (const [start, end] of [...taken].sort((a, b) => a[0] - b[0])) {
    if (Math.min(start, whole[1]) - from >= least - TOUCH) free.push([from, Math.min(start, whole[1])]);
    from = Math.max(from, end);
  }
  if (whole[1] - from >= least - TOUCH) free.push([from, whole[1]]);
  return free;
}
