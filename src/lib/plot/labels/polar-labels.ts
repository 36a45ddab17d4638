import type { Degrees } from '../../units.js';
import { boxesMeet, type Box } from '../scales/box.js';
import { polarPoint, type PolarLayout } from '../scales/polar-layout.js';
import { textWidth } from '../scales/text-width.js';
import { angleText } from '../../format/angle-text.js';

/** A text round the circle, by its middle. */
export interface PolarLabel {
  text: string;
  x: number;
  y: number;
  box: Box;
}

/** Pixels between a text and the rim, in heights of the text; the ear on the rim reaches as far. */
const OFF = 0.5;
/** Least room between two texts, so that they are not read as one. */
const APART = 0.5;
/** Bold letters are so much wider. */
const BOLD = 1.15;

/**
 * The texts round the circle, outside of it, where no curve runs: in front and behind, over a board straight up alone; the listener, as
 * near to where he is as those let him; and the angles that leave room. On bare pictures no angles, on small ones the sides alone.
 */
export function polarLabels(
  layout: PolarLayout,
  listenerDeg: Degrees,
  bare: boolean,
  board = false
): { you: PolarLabel; others: PolarLabel[] } {
  const ends = board
    ? [outside('straight up', 0, layout, 1)]
    : [outside('in front', 0, layout, 1), outside('behind', 180, layout, 1)];
  const isInside = ({ box }: PolarLabel): boolean => box.left >= 0 && box.right <= layout.width;
  const isClear = (label: PolarLabel, of: readonly PolarLabel[]): boolean =>
    of.every(({ box }) => {
      const wide = {
        ...box,
        left: box.left - APART * layout.textSize,
        right: box.right + APART * layout.textSize
      };
      return !boxesMeet(wide, label.box);
    });
  const around = Array.from({ length: 91 }, (_, i) => (i % 2 ? i + 1 : -i)).map((off) =>
    outside('you', listenerDeg + off, layout, BOLD)
  );
  const you = around.find((label) => isInside(label) && isClear(label, ends)) ?? around[0];
  const angles = bare
    ? []
    : layout.radius < 80
      ? [90, -90]
      : [30, 60, 90, 120, 150, -150, -120, -90, -60, -30];
  const named = angles
    .filter((angleDeg) => !board || Math.abs(angleDeg) <= 90)
    .map((angleDeg) => outside(angleText(angleDeg), angleDeg, layout, 1))
    .filter((label) => isClear(label, [...ends, you]));
  return { you, others: [...ends, ...named] };
}

/** A text whose box touches a circle a little outside of the rim, at an angle. */
function outside(text: string, angleDeg: Degrees, layout: PolarLayout, bold: number): PolarLabel {
  const { middle, radius, textSize } = layout;
  const [width, height] = [bold * textWidth(text, textSize), 1.1 * textSize];
  const rim = polarPoint(middle, angleDeg, radius + OFF * textSize);
  const angle = (angleDeg * Math.PI) / 180;
  const x = rim.x + (Math.sin(angle) * width) / 2;
  const y = rim.y - (Math.cos(angle) * height) / 2;
  return {
    text,
    x,
    y,
    box: { left: x - width / 2, right: x + width / 2, top: y - height / 2, bottom: y + height / 2 }
  };
}
