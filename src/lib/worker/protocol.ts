import type { Engine } from '../sounds/engine.js';
import type { SoundFigures } from '../listening/sound-figures.js';
import type { Hertz, Lufs, Seconds } from '../units.js';

/** What the page may ask of the worker. Every question has a number; the answer carries it back. */
export type Question =
  /** A seamless loop of the engine at a notch (0 idle … 8). */
  | { kind: 'engine'; engine: Engine; notch: number; sampleRate: Hertz }
  /** A seamless loop of a sounding horn. */
  | { kind: 'horn'; sampleRate: Hertz }
  | { kind: 'pinkNoise'; sampleRate: Hertz; seconds: Seconds }
  /** Keep a looped sound under a key for later `heardThrough` questions, and measure it as it is. */
  | { kind: 'keep'; key: string; samples: Float32Array; sampleRate: Hertz }
  /** Forget a kept sound. */
  | { kind: 'forget'; key: string }
  /** Loudness and peak of a kept sound, looped, behind each of these impulse responses. */
  | { kind: 'heardThrough'; key: string; impulseResponses: Float32Array[] };

export interface Heard {
  /** BS.1770-5 integrated loudness; −Infinity for silence. */
  loudness: Lufs;
  /** Largest absolute sample of the steady loop. */
  peak: number;
}

export interface Answers {
  engine: Float32Array;
  horn: Float32Array;
  pinkNoise: Float32Array;
  keep: SoundFigures;
  forget: null;
  heardThrough: Heard[];
}

export interface Asked {
  id: number;
  question: Question;
}

export type Answered = { id: number; result: unknown; error?: undefined } | { id: number; error: string };
