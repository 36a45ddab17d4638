import type { Box } from '../scales/box.js';
import type { PictureLayout } from '../scales/picture-layout.js';
import { textWidth } from '../scales/text-width.js';

export interface ZeroLabel {
  text: string;
  /** Start of the text on its baseline, pixels. */
  x: number;
  y: number;
  box: Box;
}

/**
 * The words on the zero line: at its left end, where every small speaker has long fallen below it, just above the line.
 * Null where they would take more than two fifths of the width (four fifths where little else is shown) or do not fit in
 * height: they then belong under the picture.
 */
export function zeroLabel(
  text: string,
  zeroY: number,
  layout: PictureLayout,
  bare: boolean
): ZeroLabel | null {
  const { area, textSize, narrow } = layout;
  const share = bare ? 0.8 : 0.4;
  const width = textWidth(text, textSize);
  const x = area.left + 8;
  const y = zeroY - textSize * 0.45;
  if (!text || (narrow && !bare) || width > share * (area.right - area.left)) return null;
  if (!(y - textSize >= area.top && zeroY <= area.bottom)) return null;
  return { text, x, y, box: { left: x, right: x + width, top: y - textSize * 0.85, bottom: zeroY } };
}
