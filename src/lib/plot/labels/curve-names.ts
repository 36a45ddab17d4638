import { besideLabel, type BesideLabel } from './beside-label.js';
import type { Box } from '../scales/box.js';
import type { DrawnCurve } from '../scales/drawn-curve.js';
import type { ResponseCurve } from '../response-curve.js';
import type { PictureLayout } from '../scales/picture-layout.js';
import type { Point } from '../scales/point.js';
import { textWidth } from '../scales/text-width.js';

/** A name on its curve. */
export interface CurveName {
  curve: ResponseCurve;
  text: string;
  place: BesideLabel;
}

/**
 * The names that are written on curves: each where its curve is farthest from the heard one. Those that find no room are
 * left out.
 *
 * @param discs where the discs stand
 * @param written what other words and lines cover
 */
export function curveNames(
  drawn: readonly DrawnCurve[],
  layout: PictureLayout,
  discs: readonly Point[],
  written: readonly Box[]
): CurveName[] {
  const heard = drawn.find(({ curve }) => curve.heard);
  if (!heard) return [];
  const boxes = [...written];
  const all = drawn.flatMap((one) => one.runs);
  return drawn.flatMap(({ curve, runs }) => {
    if (!curve.written || curve.heard) return [];
    const room = { width: textWidth(curve.written, layout.textSize), height: 1.7 * layout.textSize };
    const clear = Math.max(5 * layout.textSize, room.width / 2 + layout.discRadius);
    const place = besideLabel(runs, heard.runs, layout.area, room, { discs, clear, boxes, runs: all });
    if (!place) return [];
    boxes.push(place.box);
    return [{ curve, text: curve.written, place }];
  });
}
