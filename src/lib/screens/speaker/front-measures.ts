import { outlineLength, outlineWidth, type Outline } from '../../acoustics/outline.js';
import type { SpeakerPart } from '../../drawing/speaker-drawing.js';
import type { BenchSpeaker } from '../../file/bench-file.js';

/** How far the lines that measure the frame lie outside it, in pixels. */
const OUTSIDE = 9;

/**
 * Where the lines lie that measure an outline from the front, in pixels from the middle: those of the frame beside it, those of the cone
 * across it. `a` and `b` are its half length and half width.
 */
export function frontMeasures(
  speaker: Pick<BenchSpeaker, 'frame' | 'cone'>,
  of: 'frame' | 'cone',
  scale: number
): { outline: Outline; a: number; b: number; x: number; y: number } {
  const outline = speaker[of];
  const [a, b] = [outlineLength(outline) * 500 * scale, outlineWidth(outline) * 500 * scale];
  const beside = of === 'frame';
  return { outline, a, b, x: beside ? -a - OUTSIDE : 0, y: beside ? -b - OUTSIDE : 0 };
}

/** Where a leader ends in a view of this size: on the line that measures what its figure says. */
export function inFront(
  speaker: Pick<BenchSpeaker, 'frame' | 'cone'>,
  part: SpeakerPart,
  room: number,
  height: number,
  scale: number
): [number, number] {
  const of = part.startsWith('frame') ? 'frame' : 'cone';
  const { a, b, x, y } = frontMeasures(speaker, of, scale);
  const side = of === 'frame' ? -1 : 1;
  const [dx, dy] = part.endsWith('Length') ? [side * a * 0.6, y] : [x, b * 0.6];
  return [room / 2 + dx, height / 2 + dy];
}
