import type { Metres, SquareMetres } from '../units.js';

/**
 * The outline of a flat thing: a speaker's frame or cone. Length lies along the mount's length
 * (x) and width along its width (y), unless the speaker is turned.
 */
export type Outline =
  | { shape: 'rectangle'; length: Metres; width: Metres }
  | { shape: 'ellipse'; length: Metres; width: Metres }
  | { shape: 'round'; diameter: Metres };

/** Extent along x: the length, or the diameter of a round outline. */
export function outlineLength(outline: Outline): Metres {
  return outline.shape === 'round' ? outline.diameter : outline.length;
}

/** Extent along y: the width, or the diameter of a round outline. */
export function outlineWidth(outline: Outline): Metres {
  return outline.shape === 'round' ? outline.diameter : outline.width;
}

/** Area: length·width for a rectangle, π/4·length·width for an ellipse or a circle. */
export function outlineArea(outline: Outline): SquareMetres {
  const box = outlineLength(outline) * outlineWidth(outline);
  return outline.shape === 'rectangle' ? box : (Math.PI / 4) * box;
}

/** The outline as it lies after a turn of 0 or 90 degrees: at 90, length and width change places. */
export function turned(outline: Outline, turn: 0 | 90): Outline {
  if (turn === 0 || outline.shape === 'round') return outline;
  return { shape: outline.shape, length: outline.width, width: outline.length };
}

/** What rounding may cost: a part of 10⁹ of the outer outline, so that equal outlines fit into each other. */
const ROUNDING = 1e-9;

/**
 * Whether `inner`, its middle moved by `offset` = [x, y] metres from the middle of `outer`, lies wholly
 * within `outer`; outlines that touch are within.
 */
export function outlineContains(
  outer: Outline,
  inner: Outline,
  offset: readonly [Metres, Metres] = [0, 0]
): boolean {
  // scaled so that the outer outline is a square or a circle of half-width 1
  const x = (2 * Math.abs(offset[0])) / outlineLength(outer);
  const y = (2 * Math.abs(offset[1])) / outlineWidth(outer);
  const p = outlineLength(inner) / outlineLength(outer);
  const q = outlineWidth(inner) / outlineWidth(outer);
  if (outer.shape === 'rectangle') return Math.max(x + p, y + q) <= 1 + ROUNDING;
  if (inner.shape === 'rectangle') return Math.hypot(x + p, y + q) <= 1 + ROUNDING;
  return farthest(x, y, p, q) <= 1 + ROUNDING;
}

/**
 * Largest distance from the origin of the points (x + p·cos t, y + q·sin t) of an ellipse, x, y ≥ 0: the best of
 * a scan of the first quadrant (the farthest point lies there), refined by Newton's method on the derivative.
 */
function farthest(x: number, y: number, p: number, q: number): number {
  const distance = (t: number) => Math.hypot(x + p * Math.cos(t), y + q * Math.sin(t));
  const steps = 90;
  let best = 0;
  for (let i = 1; i <= steps; i++) {
    const t = (i * Math.PI) / (2 * steps);
    if (distance(t) > distance(best)) best = t;
  }
  let t = best;
  for (let i = 0; i < 8; i++) {
    const [cos, sin] = [Math.cos(t), Math.sin(t)];
    const slope = -p * sin * (x + p * cos) + q * cos * (y + q * sin);
    const bend = -p * cos * x - q * sin * y + (q * q - p * p) * Math.cos(2 * t);
    if (bend < 0) t -= slope / bend;
  }
  return Math.max(distance(best), distance(t));
}
