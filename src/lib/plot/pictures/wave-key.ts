import type { Box } from '../scales/box.js';
import { textWidth } from '../scales/text-width.js';

/** The key of the wave picture: a bar between its two words, in pixels. */
export interface WaveKeyLayout {
  height: number;
  bar: Box;
  /** Between bar and words. */
  gap: number;
}

/** Words in the middle of the width, and a bar of what is left between them, at most eight times the height of the text. */
export function waveKeyLayout(width: number, textSize: number): WaveKeyLayout {
  const gap = 0.6 * textSize;
  const [left, right] = ['thinned out', 'pressed together'].map((word) => textWidth(word, textSize) + gap);
  const bar = Math.max(textSize, Math.min(8 * textSize, 0.8 * (width - left - right)));
  const from = Math.max(left, (width - left - bar - right) / 2 + left);
  const height = 1.8 * textSize;
  return {
    height,
    bar: { left: from, right: from + bar, top: 0.28 * height, bottom: 0.78 * height },
    gap
  };
}

/** Steps of the bar. */
const STOPS = 16;

/** The colours of the scale from one end to the other, for a gradient. */
export function keyStops(colours: Uint8ClampedArray): { offset: number; colour: string }[] {
  const last = colours.length / 3 - 1;
  return Array.from({ length: STOPS + 1 }, (_, i) => {
    const at = 3 * Math.round((i * last) / STOPS);
    return { offset: i / STOPS, colour: `rgb(${[...colours.subarray(at, at + 3)].join(' ')})` };
  });
}
