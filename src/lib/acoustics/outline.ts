import type { Metres } from '../units.js';

/**
 * The outline of a flat thing: a speaker's frame or cone. Length lies along the mount's length
 * (x) and width along its width (y), unless the speaker is turned.
 */
export type Outline =
  | { shape: 'rectangle'; length: Metres; width: Metres }
  | { shape: 'ellipse'; length: Metres; width: Metres }
  | { shape: 'round'; diameter: Metres };
