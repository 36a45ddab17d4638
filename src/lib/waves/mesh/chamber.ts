import type { Metres } from '../../units.js';
import type { PatchArea } from './patch.js';
import type { Vector } from './symmetry.js';

/** A rectangular room that one sheet of a mesh encloses, but for openings. */
export interface Chamber {
  /** The sheet, whose nodes all lie on its wall. */
  sheet: number;
  /** The part of its wall that belongs to other sheets: of these, what lies within. */
  shared?: PatchArea;
  /** How much air it holds, as a share of its volume in the mesh. */
  share: number;
  /** Its least and its greatest coordinates. */
  low: Vector;
  high: Vector;
  /** The length along which standing waves set an end to an even pressure; none where it is small against all wavelengths. */
  longest?: Metres;
  /** Whether it lies behind the cone: then the cone has no free air there. */
  behind: boolean;
}
