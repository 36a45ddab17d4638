import type { Metres } from '../../units.js';
import { gradedLines } from './graded-lines.js';
import { freeEnds, type Panel, type SurfacePart } from './surface-part.js';
import type { Axis } from './symmetry.js';

/**
 * The grid lines that panels have in common on an axis, ascending. Each place where a panel begins or ends has one, and so
 * has the origin, from which lines are laid outward: panels that meet share their nodes, and what is symmetric about the
 * origin is meshed symmetrically.
 *
 * @param parts the whole surface, which knows the free edges
 * @param panels those of its panels that are meshed, or what is left of them between mirrors
 * @param spacing largest distance of neighbouring lines, above 0 where the panels have an extent
 */
export function axisLines(
  parts: readonly SurfacePart[],
  panels: readonly Panel[],
  axis: Axis,
  spacing: Metres
): Float64Array {
  const ends = new Set(panels.flatMap(({ low, high }) => [low[axis], high[axis]]));
  if (Math.min(...ends) < 0 && Math.max(...ends) > 0) ends.add(0);
  const places = [...ends].sort((a, b) => a - b);
  const free = freeEnds(parts, axis);
  const lines = places.slice(0, 1);
  for (let i = 1; i < places.length; i++)
    lines.push(...between(places[i - 1], places[i], spacing, free).slice(1));
  return Float64Array.from(lines);
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
