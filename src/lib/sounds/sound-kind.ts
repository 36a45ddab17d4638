import type { Hertz } from '../units.js';
import type { SoundKnobs } from './knob.js';
import type { Course } from './motion/course.js';
import type { Dynamics, Target } from './motion/motion.js';
import type { Span } from './blocks/span.js';

/** A rate in the sound that the picture marks: in engines the firings, with so many of its harmonics. */
export interface MarkedRate {
  frequency: Hertz;
  /** What it is, in a few words: "firing rate", "C5". */
  name: string;
  /** How many of its multiples are marked, itself among them. */
  harmonics: number;
}

/** What there is to say of a sound that stands still. */
export interface StillKind<S> {
  knobs: SoundKnobs;
  /** The rates that the picture of this sound marks; the first is the one that the sentence below it is about. */
  marks(sound: S): MarkedRate[];
}

/** How a sound that stands still is made: it is one seamless loop. */
export interface StillSource<S> extends StillKind<S> {
  /** One seamless loop; how loud does not matter here, sounds are aligned in loudness where they are asked for. */
  render(sound: S, sampleRate: Hertz): Float32Array;
}

/**
 * A machine with a lever, the knob `notch`: at every notch it runs steadily, as a seamless loop of whole patterns;
 * a moved lever is heard as a ride from where the machine was to the loop of the new notch (motion/ride.ts).
 */
export interface MovingKind<S> {
  knobs: SoundKnobs;
  /** How it runs when it has settled at its notch. */
  target(sound: S): Target;
  dynamics(sound: S): Dynamics;
  /** Turns after which the pattern of unequal pulses comes round. */
  patternTurns(sound: S): number;
  /** The rates at its notch, when it has settled. */
  marks(sound: S): MarkedRate[];
}

/** How a machine is made. */
export interface MovingSource<S> extends MovingKind<S> {
  /** The sound along a course. Levels at different notches are in their true proportion. */
  render(sound: S, course: Course, span: Span): Float32Array;
}
