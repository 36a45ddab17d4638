import type { Decibels } from '../../units.js';
import type { CurveStyle } from '../curve-style.js';

/** What stands at the head of a column. */
export interface HarmonicColumn {
  numeral: string;
  name: string;
  style: CurveStyle;
  heard: boolean;
}

/** One harmonic of the sound and what is left of it in each column. */
export interface HarmonicRow {
  number: number;
  frequencyText: string;
  ownDb: Decibels;
  /** Null, or NaN, where there is no figure; −Infinity where nothing comes through. */
  throughDb: (Decibels | null)[];
}
