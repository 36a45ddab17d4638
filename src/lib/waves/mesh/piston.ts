import type { Outline } from '../../acoustics/outline.js';
import type { Metres } from '../../units.js';

/** A cone that moves as one, in the plane z = 0 of a surface whose normal there is +z. */
export interface Piston {
  outline: Outline;
  /** Its middle. */
  middle: readonly [Metres, Metres];
}
