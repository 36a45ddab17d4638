import type { CurveLevel, ResponseBand } from '../response-curve.js';
import { frequencyText } from '../../format/frequency-text.js';
import type { Box } from '../scales/box.js';
import type { PictureLayout } from '../scales/picture-layout.js';
import { lossText } from './readout.js';
import { textWidth } from '../scales/text-width.js';

export interface ReadoutBox extends Box {
  title: string;
  loss: string | null;
  rowHeight: number;
  /** Whether there is room for the names beside the numerals. */
  named: boolean;
  padding: number;
}

/** Pixels between the pointed line and the box. */
const lineGap = 14;

/**
 * The size and place of the box beside the pointed line at `x`: on its right, on its left where that is outside; at the
 * floor of the area, where it covers bars rather than curves. `source` is what the band is a part of.
 */
export function readoutBox(
  at: number,
  levels: readonly CurveLevel[],
  band: ResponseBand | null,
  source: string,
  x: number,
  layout: PictureLayout
): ReadoutBox {
  const { area, textSize, narrow } = layout;
  const title = frequencyText(at);
  const change = band && lossText(band);
  const loss = change && (narrow ? `band: ${change}` : `this band of ${source}: ${change}`);
  const named = !narrow;
  const padding = narrow ? 6 : 9;
  const lines = levels.length + 1 + (loss ? 1 : 0);
  const rowHeight = Math.min(textSize * 1.5, (area.bottom - area.top - 4 - 2 * padding) / lines);
  const figureWidth = textWidth('no figure', textSize);
  const widest = Math.max(
    textWidth(title, textSize),
    textWidth(loss ?? '', textSize),
    ...levels.map(
      ({ curve }) => textSize * 1.6 + (named ? textWidth(curve.name, textSize) + textSize : 0) + figureWidth
    )
  );
  const width = Math.min(widest + 2 * padding, area.right - area.left - 4);
  const height = lines * rowHeight + 2 * padding;
  const right = x + lineGap + width <= area.right - 2;
  const left = right ? x + lineGap : Math.max(area.left + 2, x - lineGap - width);
  const bottom = area.bottom - Math.max(2, Math.min(10, area.bottom - area.top - height - 2));
  return { left, right: left + width, top: bottom - height, bottom, title, loss, rowHeight, named, padding };
}
