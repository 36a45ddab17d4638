import type { Area } from '../scales/area.js';
import { boxesMeet, discMeetsBox, type Box } from '../scales/box.js';
import type { ResponseMarker } from '../response-curve.js';
import type { Point } from '../scales/point.js';
import { runMeetsBox } from '../scales/run-meets-box.js';
import { textWidth } from '../scales/text-width.js';

export interface MarkerLine {
  x: number;
  text: string;
  kind?: ResponseMarker['kind'];
}

export interface MarkerLabel {
  /** Where the text begins or ends, on its baseline. */
  x: number;
  y: number;
  anchor: 'start' | 'end';
  box: Box;
}

export interface Obstacles {
  discs: readonly Point[];
  discRadius: number;
  boxes: readonly Box[];
  /** Visible parts of the curves: crossing them is avoided, but not forbidden. */
  runs: readonly Point[][];
}

const lineGap = 6;
const ROW_COST = 0.25;
const BOTH = ['start', 'end'] as const;
const BELOW = ['end'] as const;

/**
 * Where the text beside each marker line stands: inside the area, clear of discs, boxes and other such texts, and of
 * curves and other lines if it can be. Tried from the top downward, on the right of the line and on its left; on its
 * left only where it is about what is below.
 * Null where there is no clear place: the line then stays without text.
 */
export function markerLabels(
  lines: readonly MarkerLine[],
  area: Area,
  textSize: number,
  obstacles: Obstacles
): (MarkerLabel | null)[] {
  const taken: Box[] = [...obstacles.boxes];
  return lines.map((line, own) => {
    const width = textWidth(line.text, textSize);
    const rows = Math.floor((area.bottom - area.top - 8) / (textSize * 1.4));
    let best: MarkerLabel | null = null;
    let bestCost = Infinity;
    // a row further down costs more by itself
    for (let row = 0; row < rows && row * ROW_COST < bestCost; row++)
      for (const anchor of saysBelow(line) ? BELOW : BOTH) {
        const label = labelAt(line.x, area.top + textSize * (1.1 + row * 1.4), anchor, width, textSize);
        if (!isClear(label.box, area, taken, obstacles)) continue;
        const crossings =
          obstacles.runs.filter((run) => runMeetsBox(run, label.box)).length +
          lines.filter((other, i) => i !== own && isAcross(other, label.box)).length;
        const cost = row * ROW_COST + crossings * 2 + (anchor === 'end' ? 0.1 : 0);
        if (cost < bestCost) [best, bestCost] = [label, cost];
      }
    if (best) taken.push(best.box);
    return best;
  });
}

function saysBelow({ kind }: MarkerLine): boolean {
  return kind === 'range-below' || kind === 'half-wave';
}

/** A range has no line. */
function isAcross({ x, kind }: MarkerLine, { left, right }: Box): boolean {
  return kind !== 'range-below' && x > left && x < right;
}

function labelAt(
  lineX: number,
  y: number,
  anchor: 'start' | 'end',
  width: number,
  textSize: number
): MarkerLabel {
  const x = anchor === 'start' ? lineX + lineGap : lineX - lineGap;
  const left = anchor === 'start' ? x : x - width;
  return {
    x,
    y,
    anchor,
    box: { left, right: left + width, top: y - textSize * 0.85, bottom: y + textSize * 0.3 }
  };
}

function isClear(box: Box, area: Area, taken: readonly Box[], obstacles: Obstacles): boolean {
  if (box.left < area.left + 2 || box.right > area.right - 2) return false;
  if (box.top < area.top + 2 || box.bottom > area.bottom - 2) return false;
  return (
    !taken.some((other) => boxesMeet(box, other)) &&
    !obstacles.discs.some((disc) => discMeetsBox(disc.x, disc.y, obstacles.discRadius + 3, box))
  );
}
