import type { Area } from '../scales/area.js';
import { boxesMeet, type Box } from '../scales/box.js';
import type { Point } from '../scales/point.js';
import { runMeetsBox } from '../scales/run-meets-box.js';

/** Where the middle of a name stands at a curve's height, on which side of the curve, and what it covers. */
export interface BesideLabel extends Point {
  below: boolean;
  box: Box;
}

/** The name keeps away from the sides by these shares of the width: there stand the zero line's words and what is above a model's end. */
const KEEP = { left: 0.12, right: 0.14 };

/**
 * How far the middle of a name lies beside the point of the curve that it stands at, in its widths, and how far it keeps away, in
 * its heights: a slanting curve has room aside, or a little farther off.
 */
const PLACES = [0, 0.35].flatMap((off) => [0, -0.5, 0.5].map((aside) => ({ aside, off })));

/** Pixels between the points that are tried: places closer than that are as good. */
const STEP = 8;
/** Letters keep this part of a name's height off the curve. */
const CLEAR = 0.15;
/** Where the curves are closer than this part of it, a name could be either one's. */
const LEAST = 0.2;

/** What a name keeps clear of. */
export interface BesideObstacles {
  discs?: readonly Point[];
  /** How far the middle of a name stays from a disc, in pixels; half of it up and down. */
  clear?: number;
  /** What other words and lines cover. */
  boxes?: readonly Box[];
  /** More curves: like its own, they go through it only if there is no better place. */
  runs?: readonly Point[][];
}

/**
 * Where the name of a curve stands that is drawn beside another one: on the far side, where the two are farthest apart of all places
 * that are clear; where they are hardly apart, or a curve goes through it, only if there is no other. Null where they share no place inside that has room for it.
 *
 * @param room width and height of the name, in pixels
 */
export function besideLabel(
  own: readonly Point[][],
  other: readonly Point[][],
  area: Area,
  room: { width: number; height: number },
  { discs = [], clear = 0, boxes = [], runs = [] }: BesideObstacles = {}
): BesideLabel | null {
  const from = area.left + KEEP.left * (area.right - area.left);
  const to = area.right - KEEP.right * (area.right - area.left);
  const height = new Map(other.flat().map(({ x, y }) => [Math.round(x), y]));
  const curves = [...own, ...other, ...runs];
  let found: BesideLabel | null = null;
  let [widest, isPoor] = [-1, true];
  let tried = -Infinity;
  for (const { x, y } of own.flat()) {
    const opposite = height.get(Math.round(x));
    if (x < from || x > to || x < tried + STEP || opposite === undefined) continue;
    tried = x;
    const apart = Math.abs(y - opposite);
    if (apart <= widest && !isPoor) continue;
    const below = y > opposite;
    for (const { aside, off } of PLACES) {
      const middle = x + aside * room.width;
      const at = y + (below ? off : -off) * room.height;
      const box = {
        left: middle - room.width / 2,
        right: middle + room.width / 2,
        top: below ? at : at - room.height,
        bottom: below ? at + room.height : at
      };
      if (box.left < area.left || box.right > area.right) continue;
      if (box.top < area.top || box.bottom > area.bottom) continue;
      if (discs.some((disc) => Math.abs(disc.x - middle) < clear && Math.abs(disc.y - at) < clear / 2))
        continue;
      if (boxes.some((other) => boxesMeet(other, box))) continue;
      const top = box.top + (below ? CLEAR * room.height : 0);
      const bottom = box.bottom - (below ? 0 : CLEAR * room.height);
      const poor =
        apart < LEAST * room.height || curves.some((run) => runMeetsBox(run, { ...box, top, bottom }));
      if (poor === isPoor ? apart <= widest : poor) continue;
      [widest, isPoor, found] = [apart, poor, { x: middle, y: at, below, box }];
    }
  }
  return found;
}
