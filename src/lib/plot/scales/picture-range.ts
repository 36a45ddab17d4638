import { USUAL_RANGE } from '../../numeric/third-octave-bands.js';
import type { Decibels, Hertz } from '../../units.js';

/** What the axes of the response picture show. */
export interface PictureRange {
  from: Hertz;
  to: Hertz;
  top: Decibels;
  bottom: Decibels;
  /** What 0 dB is in dB re 20 µPa, where levels are written so; they are written against it unless told. */
  zeroDb?: Decibels;
}

export const usualRange: PictureRange = { ...USUAL_RANGE, top: 12, bottom: -42 };
