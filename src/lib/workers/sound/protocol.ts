import type { SoundFigures } from '../../listening/sound-figures.js';
import type { Strain } from '../../listening/strain.js';
import type { Signal } from '../../sounds/driving.js';
import type { GeneratedSound, MovingSound } from '../../sounds/kinds.js';
import type { Motion } from '../../sounds/motion/motion.js';
import type { Ride } from '../../sounds/motion/ride.js';
import type { PlaceKind } from '../../sounds/places/place-spectra.js';
import type { Hertz, Lufs } from '../../units.js';

/** What the page may ask of the worker. Every question has a number; the answer carries it back. */
export type Question =
  /** Have a sound made that is asked for next. */
  | { kind: 'prepare'; sound: GeneratedSound; sampleRate: Hertz }
  /** A seamless loop of a sound, aligned in loudness. */
  | { kind: 'sound'; sound: GeneratedSound; sampleRate: Hertz }
  /** A machine on its way from how it runs to its notch, and its loop there. */
  | { kind: 'ride'; sound: MovingSound; from: Motion; sampleRate: Hertz }
  /** The noise of a place, a seamless loop. */
  | { kind: 'place'; place: PlaceKind; sampleRate: Hertz }
  /** What the cord blows. */
  | { kind: 'blast'; signal: Signal; sampleRate: Hertz }
  /** Keep a looped sound under a key for later questions: as it is, or with `align` brought to the loudness of all sounds first. */
  | { kind: 'keep'; key: string; samples: Float32Array; sampleRate: Hertz; align?: boolean }
  /** What is measured of a kept sound by itself. */
  | { kind: 'figures'; key: string }
  /** Forget a kept sound. */
  | { kind: 'forget'; key: string }
  /** BS.1770-5 integrated loudness of a kept sound, looped, behind each of these impulse responses; −Infinity for silence. */
  | { kind: 'loudnessThrough'; key: string; impulseResponses: Float32Array[] }
  /** Its largest absolute sample behind each. */
  | { kind: 'peaksThrough'; key: string; impulseResponses: Float32Array[] }
  /** What a kept sound, looped, asks of what it drives: as it is, and behind each of these impulse responses. */
  | { kind: 'strainThrough'; key: string; impulseResponses: Float32Array[] };

/** The gain that brought a kept sound to the common loudness (1 where it was left). */
export interface Kept {
  gain: number;
}

export interface Answers {
  prepare: null;
  sound: Float32Array;
  ride: Ride;
  blast: Ride;
  place: Float32Array;
  keep: Kept;
  figures: SoundFigures;
  forget: null;
  loudnessThrough: Lufs[];
  peaksThrough: number[];
  strainThrough: { own: Strain; through: Strain[] };
}

export interface Asked {
  id: number;
  question: Question;
}

export type Answered = { id: number; result: unknown; error?: undefined } | { id: number; error: string };
