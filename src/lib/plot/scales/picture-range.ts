import { USUAL_RANGE } from '../../numeric/third-octave-bands.js';
import type { Decibels, Hertz } from '../../units.js';

/** What the axes of the response picture show. */
export interface PictureRange {
  from: Hertz;
  to: Hertz;
  top: Decibels;
  bottom: Decibels;
}

export const usualRange: PictureRange = { ...USUAL_RANGE, top: 12, bottom: -42 };
