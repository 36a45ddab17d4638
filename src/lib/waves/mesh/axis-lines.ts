import type { Metres } from '../../units.js';
import { gradedLines } from './graded-lines.js';
import { freeEnds, type Panel, type SurfacePart } from './surface-part.js';
import type { Axis, Vector } from './symmetry.js';

/** Where lines are to lie nearer to each other: on every axis from, until and the largest distance there. */
export interface Denser {
  low: Vector;
  high: Vector;
  spacing: Vector;
}

/**
 * The grid lines that panels have in common on an axis, ascending. Each place where a panel begins or ends has one, and so
 * has the origin, from which lines are laid outward: panels that meet share their nodes, and what is symmetric about the
 * origin is meshed symmetrically.
 *
 * @param parts the whole surface, which knows the free edges
 * @param panels those of its panels that are meshed, or what is left of them between mirrors
 * @param spacing largest distance of neighbouring lines, above 0 where the panels have an extent
 * @param denser has lines where it begins and ends
 */
export function axisLines(
  parts: readonly SurfacePart[],
  panels: readonly Panel[],
  axis: Axis,
  spacing: Metres,
  denser?: Denser
): Float64Array {
  const ends = new Set(panels.flatMap(({ low, high }) => [low[axis], high[axis]]));
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  if (least < 0 && most > 0) ends.add(0);
  if (denser)
    for (const end of [denser.low[axis], denser.high[axis]]) if (end > least && end < most) ends.add(end);
  const places = [...ends].sort((a, b) => a - b);
  const free = freeEnds(parts, axis);
  const lines = places.slice(0, 1);
  for (let i = 1; i < places.length; i++)
    lines.push(
      ...between(places[i - 1], places[i], spacingAt(places[i], axis, spacing, denser), free).slice(1)
    );
  return Float64Array.from(lines);
}

/** The largest distance of lines over the stretch that ends there. */
function spacingAt(end: Metres, axis: Axis, spacing: Metres, denser?: Denser): Metres {
  if (!denser || end <= denser.low[axis] || end > denser.high[axis]) return spacing;
  return Math.min(spacing, denser.spacing[axis]);
}

/** Lines over one stretch, both ends included. */
function between(from: Metres, to: Metres, spacing: Metres, free: readonly Metres[]): Metres[] {
  const [freeFrom, freeTo] = [free.includes(from), free.includes(to)];
  if (freeFrom && freeTo) {
    const middle = (from + to) / 2;
    return [...between(from, middle, spacing, free), ...between(middle, to, spacing, free).slice(1)];
  }
  const distances = [...gradedLines(to - from, spacing, freeFrom || freeTo)];
  // towards the free end, or else outward
  const upward = freeTo || (!freeFrom && from >= 0);
  const lines = upward ? distances.map((d) => from + d) : distances.map((d) => to - d).reverse();
  lines[0] = from;
  lines[lines.length - 1] = to;
  return lines;
}
