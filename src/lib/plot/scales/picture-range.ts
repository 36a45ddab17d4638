import type { Decibels, Hertz } from '../../units.js';

/** What the axes of the response picture show. */
export interface PictureRange {
  from: Hertz;
  to: Hertz;
  top: Decibels;
  bottom: Decibels;
}

export const usualRange: PictureRange = { from: 50, to: 16000, top: 12, bottom: -42 };
