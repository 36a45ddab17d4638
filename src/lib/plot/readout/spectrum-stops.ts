import type { Hertz } from '../../units.js';
import type { SpectrumMark } from '../marks/sound-spectrum.js';
import { thirdOctaves } from '../scales/third-octaves.js';

/** Third octaves nearer to a mark than this ratio give way to it. */
const NEAR = 1.06;

/** Where the keyboard halts and what the table lists: the marks and, clear of them, the nominal third octaves; ascending. */
export function spectrumStops(marks: readonly SpectrumMark[], from: Hertz, to: Hertz): Hertz[] {
  const marked = [...new Set(marks.map((mark) => mark.frequency))].filter((f) => f >= from && f <= to);
  const between = thirdOctaves(from, to).filter((f) =>
    marked.every((own) => Math.max(own / f, f / own) > NEAR)
  );
  return [...marked, ...between].sort((a, b) => a - b);
}

/** The mark whose line stands nearest to a place in pixels, no more than `within` away; null where there is none. */
export function markAt(
  marks: readonly SpectrumMark[],
  place: number,
  x: (frequency: number) => number,
  within: number
): SpectrumMark | null {
  let nearest: SpectrumMark | null = null;
  let least = within;
  for (const mark of marks) {
    const distance = Math.abs(x(mark.frequency) - place);
    if (distance <= least) [nearest, least] = [mark, distance];
  }
  return nearest;
}
