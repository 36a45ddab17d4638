import type { Air } from '../../acoustics/air.js';
import type { Installation } from '../../acoustics/installation.js';
import type { Listener } from '../../acoustics/listener.js';
import type { Hertz, Metres } from '../../units.js';
import type { AccuracyName } from '../../waves/mesh/accuracy.js';
import type { FieldImage } from '../../waves/field/field-on-grid.js';
import type { SectionGrid } from '../../waves/field/section-grid.js';
import type { HeardWaves } from '../../waves/curve/heard-waves.js';

/** What is solved: a mount, the air and how finely. */
export interface MountAsked {
  installation: Installation;
  air: Air;
  accuracy: AccuracyName;
}

/** What the page may ask of the workers that solve waves. Frequencies are within 1 Hz … `highest` of the mount's mesh. */
export type WaveQuestion = MountAsked &
  (
    | {
        /** What these listeners hear of a mount. */
        kind: 'hear';
        listeners: Listener[];
      }
    | {
        /** Level in dB against angle at one frequency; without a distance in the far field. */
        kind: 'polar';
        frequency: Hertz;
        plane: Listener['plane'];
        distance?: Metres;
        anglesDeg: Float64Array;
      }
    | {
        /** Pressure in a section, one image a frequency. */
        kind: 'field';
        frequencies: Float64Array;
        grid: SectionGrid;
      }
    | {
        /** Some of the harmonics of a puff in a section (`puffFrequencies`), one image each. */
        kind: 'puff';
        frequencies: Float64Array;
        grid: SectionGrid;
      }
  );

export interface WaveAnswers {
  hear: HeardWaves[];
  polar: Float64Array;
  field: FieldImage[];
  puff: FieldImage[];
}

/** What is sent to a worker: a question under a number, or the number of one that nobody waits for any more. */
export type WaveAsked = { id: number; question: WaveQuestion; urgent: boolean } | { drop: number };

/** What a worker has at hand, as `solutionKey`s. */
export interface Holdings {
  /** Another listener of these is read off at once. */
  solved: string[];
  /** The matrices of these are there, so that another frequency is quick. */
  meshed: string[];
}

/**
 * What a worker says: progress, 0 … 1, and in the end exactly one of the others for every question. A dropped one is
 * acknowledged, unless its answer was on the way already.
 */
export type WaveSaid =
  | { id: number; said: 'progress'; share: number }
  | ({ id: number; holds: Holdings } & (
      | { said: 'result'; result: unknown }
      | { said: 'error'; message: string }
      | { said: 'dropped' }
    ));
