import type { Decibels } from '../../units.js';
import type { CurveStyle } from '../marks/curve-style.js';

/** A mount at the head of a column. */
export interface HarmonicColumn {
  numeral: string;
  name: string;
  style: CurveStyle;
  heard: boolean;
}

/** One harmonic of the sound and what each mount, in the order of the columns, lets through of it. */
export interface HarmonicRow {
  number: number;
  frequencyText: string;
  ownDb: Decibels;
  /** Null, or NaN, where there is no figure; −Infinity where nothing comes through. */
  throughDb: (Decibels | null)[];
}
