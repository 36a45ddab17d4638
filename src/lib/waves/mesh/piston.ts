import type { Outline } from '../../acoustics/outline.js';
import type { Vector } from './symmetry.js';

/**
 * A cone that moves as one along the normal of the surface, in a part of it that is parallel to the plane z = 0. A surface may
 * have several, which move each for itself.
 */
export interface Piston {
  outline: Outline;
  /** Its middle. */
  middle: Vector;
}
