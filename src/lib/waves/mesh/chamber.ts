import type { Vector } from './symmetry.js';

/** A rectangular room that one sheet of a mesh encloses, but for openings. */
export interface Chamber {
  /** The sheet, whose nodes all lie on its wall. */
  sheet: number;
  /** Which share of the room holds air: the rest is full of speaker and mechanism. */
  share: number;
  /** Its least and its greatest coordinates. */
  low: Vector;
  high: Vector;
}
