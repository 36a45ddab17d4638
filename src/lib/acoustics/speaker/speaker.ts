import type { CubicMetres, Kilograms, Metres, Ohms, Watts } from '../../units.js';
import type { Outline } from '../outline.js';

/** Small-signal motor values of a speaker (R. H. Small, J. Audio Eng. Soc. 20 (1972)). SI throughout. */
export interface Motor {
  /** Moving mass with the air load of free air. */
  mms: Kilograms;
  /** Compliance of the suspension in m/N. */
  cms: number;
  /** Force factor in N/A. */
  bl: number;
  /** Resistance of the voice coil. */
  re: Ohms;
  /** Mechanical quality factor. */
  qms: number;
  /** Largest linear displacement, one way. */
  xmax: Metres;
  ratedPower: Watts;
}

export interface Speaker {
  name: string;
  frame: Outline;
  /** Depth of the body behind the frame's front. */
  depth: Metres;
  cone: Outline;
  motor: Motor;
  /** Volume of the speaker's own body, taken from a box's inside. */
  bodyVolume: CubicMetres;
}
