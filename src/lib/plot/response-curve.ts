import type { Decibels, Hertz } from '../units.js';
import type { CurveStyle } from './curve-style.js';

/** One curve of the response picture, with the name and the numeral it goes by. */
export interface ResponseCurve {
  id: number;
  /** What stands in the disc: the key that makes it heard. */
  numeral: string;
  name: string;
  /** Ascending. */
  frequency: Float64Array;
  /** Same length as `frequency`; NaN is a gap, −Infinity is silence. */
  levelDb: Float64Array;
  style: CurveStyle;
  heard: boolean;
  /** Another answer to the heard one: drawn thin, without a disc. */
  beside?: boolean;
  /** What is written of it under the picture; the others have their discs. */
  written?: string;
  /** Up to where it was computed, where that ends within the picture: above, it is an estimate. */
  computedTo?: Hertz;
}

/** What curves are held against: the area below it is drawn behind them. */
export interface ResponseGround {
  /** Ascending. */
  frequency: Float64Array;
  /** Same length. */
  levelDb: Float64Array;
}

/** The level of one curve at one frequency, as the readout and the table show it. */
export interface CurveLevel {
  curve: ResponseCurve;
  levelDb: Decibels;
}

/** The edges of one band of the sound and its level before and behind what is in its way, dB on a scale of their own. */
export interface ResponseBand {
  low: Hertz;
  high: Hertz;
  label: string;
  outlineDb: Decibels;
  filledDb: Decibels;
}

/** A frequency worth a line of its own in the picture. */
export interface ResponseMarker {
  frequency: Hertz;
  text: string;
  /** All but a range, which says something of all that is below it, have a line. */
  kind: 'half-wave' | 'ring' | 'remark' | 'range-below';
}
