import type { Area } from '../scales/area.js';
import { boxesMeet, type Box } from '../scales/box.js';
import type { LaneLine } from './lane-labels.js';
import { textWidth } from '../scales/text-width.js';

/** Least pixels between two neighbouring figures. */
const GAP = 3;

/**
 * The boxes of the figures centred under ticks, on one baseline: inside the area, clear of what is taken and of each
 * other. An earlier one has the right of way; null where there is no room or no text, the tick then stays alone.
 */
export function tickLabels(
  ticks: readonly LaneLine[],
  baseline: number,
  area: Area,
  textSize: number,
  taken: readonly Box[]
): (Box | null)[] {
  const boxes: Box[] = [...taken];
  return ticks.map(({ x, text }) => {
    if (!text) return null;
    const half = textWidth(text, textSize) / 2 + GAP / 2;
    const box = {
      left: x - half,
      right: x + half,
      top: baseline - textSize * 0.85,
      bottom: baseline + textSize * 0.3
    };
    if (box.left < area.left || box.right > area.right) return null;
    if (boxes.some((other) => boxesMeet(other, box))) return null;
    boxes.push(box);
    return box;
  });
}
