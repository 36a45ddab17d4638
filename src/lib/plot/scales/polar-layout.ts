import type { Decibels } from '../../units.js';
import type { PictureLayout } from './picture-layout.js';
import { pictureLayout } from './picture-layout.js';
import type { Point } from './point.js';

/** Sizes of the polar picture, in pixels. */
export interface PolarLayout extends PictureLayout {
  middle: Point;
  /** Of the outermost ring. */
  radius: number;
}

/** Rings from the outermost inwards. */
const RANGE: Decibels = 40;
/** The outermost ring, unless something is louder. */
const TOP: Decibels = 10;
const STEP: Decibels = 10;
/** Room for words above and below the circle, and beside a bare one, in heights of the text. */
const ABOVE = 2.2;
const BELOW = 1.7;
const BARE = 2.4;

/** Lays out the picture in so many pixels of width; `bare` is for a projector. Widths below 160 are laid out as that. */
export function polarLayout(size: number, bare: boolean, bareTextSize?: number): PolarLayout {
  const width = Math.max(160, size);
  // strokes and figures as in the other pictures of that size
  const usual = pictureLayout(width, width, bare, bareTextSize);
  const textSize = bare ? usual.textSize : 13;
  // "−150°" beside it unless bare; "in front" above it, and the ear on its rim
  const radius = width / 2 - (bare ? BARE : 3.1) * textSize;
  const middle = { x: width / 2, y: radius + ABOVE * textSize };
  return {
    ...usual,
    textSize,
    width,
    height: middle.y + radius + BELOW * textSize,
    middle,
    radius,
    area: {
      left: middle.x - radius,
      right: middle.x + radius,
      top: middle.y - radius,
      bottom: middle.y + radius
    }
  };
}

/** The size of the largest bare picture that a room holds, in pixels. */
export function largestPolar(width: number, height: number, textSize: number): number {
  return Math.min(width, height - (ABOVE + BELOW - 2 * BARE) * textSize);
}

/** Levels of the rings, from the outermost inwards; the middle is 40 dB below the first. */
export function ringLevels(levels: readonly (Float64Array | null)[]): Decibels[] {
  let loudest = TOP;
  for (const level of levels) for (const each of level ?? []) if (each > loudest) loudest = each;
  const top = Math.ceil(loudest / STEP) * STEP;
  return Array.from({ length: RANGE / STEP }, (_, i) => top - i * STEP);
}

/** How far a level lies from the middle; what is below the range lies in it, what is above on the outermost ring. */
export function ringRadius(levelDb: Decibels, top: Decibels, radius: number): number {
  const share = (levelDb - top + RANGE) / RANGE;
  return radius * Math.max(0, Math.min(1, share));
}

/** The point at an angle, 0 up and to the right for angles above 0, so far from the middle. */
export function polarPoint({ x, y }: Point, angleDeg: number, away: number): Point {
  const angle = (angleDeg * Math.PI) / 180;
  return { x: x + away * Math.sin(angle), y: y - away * Math.cos(angle) };
}

/** The level all round as runs of points, broken where there is no figure. */
export function polarRuns(
  anglesDeg: Float64Array,
  levelDb: Float64Array,
  top: Decibels,
  { middle, radius }: Pick<PolarLayout, 'middle' | 'radius'>
): Point[][] {
  const runs: Point[][] = [];
  let broken = true;
  anglesDeg.forEach((angleDeg, i) => {
    if (Number.isNaN(levelDb[i])) {
      broken = true;
      return;
    }
    if (broken) runs.push([]);
    broken = false;
    runs[runs.length - 1].push(polarPoint(middle, angleDeg, ringRadius(levelDb[i], top, radius)));
  });
  return runs;
}
