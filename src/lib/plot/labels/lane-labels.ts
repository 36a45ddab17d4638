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
 * over its line, or beside it on the side that it speaks of; in a higher row if need be, with its line drawn up to it. As many as
 * can find room; among equals earlier ones choose first. Null where there is no room: its words then belong under the picture.
 *
 * @param lines a handful: all ways to set them are tried
 * @param first the lowest row that may be taken
 */
export function laneLabels(
  lines: readonly LaneLine[],
  layout: PictureLayout,
  first = 0
): (LaneLabel | null)[] {
  const places = lines.map((line) =>
    Array.from({ length: layout.lanes - first }, (_, i) => placesIn(first + i, line, layout))
      .flat()
      .filter(({ box }) => box.left >= 0 && box.right <= layout.width)
  );
  let best: { labels: (LaneLabel | null)[]; count: number } = { labels: lines.map(() => null), count: 0 };
  const set = (labels: (LaneLabel | null)[], count: number): void => {
    const own = labels.length;
    if (count + lines.length - own <= best.count) return;
    if (own === lines.length) {
      best = { labels, count };
      return;
    }
    for (const label of places[own])
      if (labels.every((other, i) => !other || areApart(lines[own], label.box, lines[i], other.box)))
        set([...labels, label], count + 1);
    set([...labels, null], count);
  };
  set([], 0);
  return best.labels;
}

/** Whether two texts can stand so: neither on the other, nor on the line that goes up to it through the rows below. */
function areApart(line: LaneLine, box: Box, otherLine: LaneLine, other: Box): boolean {
  const wide = { ...other, left: other.left - APART, right: other.right + APART };
  return !boxesMeet(wide, box) && !passes(line, box, other) && !passes(otherLine, other, box);
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
