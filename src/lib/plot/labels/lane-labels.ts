import { boxesMeet, type Box } from '../scales/box.js';
import { laneHeight, type PictureLayout } from '../scales/picture-layout.js';
import type { ResponseMarker } from '../response-curve.js';
import { textWidth } from '../scales/text-width.js';

/** What is said of a place on the axis, or of all beyond it. */
export interface LaneLine {
  x: number;
  text: string;
  kind?: ResponseMarker['kind'] | 'range-above';
}

/** A text above the drawing. */
export interface LaneLabel {
  /** Where the text begins, ends or has its middle, on its baseline. */
  x: number;
  y: number;
  anchor: 'start' | 'middle' | 'end';
  box: Box;
}

/** Least pixels between two texts, and between a text and a line that it does not belong to. */
const APART = 8;

/**
 * The texts about places on the axis, in the rows above the drawing: where nothing is drawn, no text lies on anything. Each stands
 * over its line, or beside it on the side that it speaks of; in a higher row if need be, with its line drawn up to it. Earlier
 * ones choose first. Null where there is no room: its words then belong under the picture.
 *
 * @param first the lowest row that may be taken
 */
export function laneLabels(
  lines: readonly LaneLine[],
  layout: PictureLayout,
  first = 0
): (LaneLabel | null)[] {
  const placed: { label: LaneLabel; own: number }[] = [];
  const isFree = (box: Box, own: number): boolean =>
    box.left >= 0 &&
    box.right <= layout.width &&
    placed.every(({ label, own: other }) => {
      const wide = { ...label.box, left: label.box.left - APART, right: label.box.right + APART };
      // A line goes up to its text through all rows below it.
      return (
        !boxesMeet(wide, box) && !passes(lines[own], box, label.box) && !passes(lines[other], label.box, box)
      );
    });
  return lines.map((line, own) => {
    for (let row = first; row < layout.lanes; row++)
      for (const label of placesIn(row, line, layout))
        if (isFree(label.box, own)) {
          placed.push({ label, own });
          return label;
        }
    return null;
  });
}

/** Whether the line up to `box` passes through `other`, which stands in a lower row. */
function passes({ x, kind }: LaneLine, box: Box, other: Box): boolean {
  const isDrawn = kind !== 'range-below' && kind !== 'range-above';
  return isDrawn && box.bottom <= other.top && x > other.left - APART / 2 && x < other.right + APART / 2;
}

/** A row's places for a text, the best first. */
function placesIn(row: number, { x, text, kind }: LaneLine, layout: PictureLayout): LaneLabel[] {
  const { area, textSize } = layout;
  const width = textWidth(text, textSize);
  const y = area.top - row * laneHeight(textSize) - 0.45 * textSize;
  const at = (x: number, anchor: LaneLabel['anchor']): LaneLabel => {
    const left = x - { start: 0, middle: width / 2, end: width }[anchor];
    const box = { left, right: left + width, top: y - 0.85 * textSize, bottom: y + 0.3 * textSize };
    return { x, y, anchor, box };
  };
  switch (kind) {
    case 'range-below':
    case 'half-wave':
      return [at(x, 'end')];
    case 'range-above':
      return [at(x, 'start'), at(area.right, 'end')];
    default:
      return [at(x, 'middle'), at(x, 'start'), at(x, 'end')];
  }
}
