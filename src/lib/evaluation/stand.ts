import type { Air } from '../acoustics/air.js';
import { checkInstallation } from '../acoustics/mounts/check-installation.js';
import type { Installation } from '../acoustics/installation.js';
import { midLevel, reachesDown } from '../acoustics/figures/reaches-down.js';
import type { Response } from '../acoustics/response.js';
import { ruleFigures, type RuleFigures } from '../acoustics/rule/rule-figures.js';
import { stringPath, type StringPath } from '../acoustics/mounts/string-path.js';
import { fftFrequencies, impulseResponse, tapsFor } from '../numeric/impulse-response.js';
import { levelDb } from '../numeric/level-db.js';
import { logGrid } from '../numeric/log-grid.js';
import { USUAL_RANGE } from '../numeric/third-octave-bands.js';
import type { Hertz } from '../units.js';
import type { Setup } from '../file/bench-file.js';
import { type Answer, drivenAnswer, takenInto, type TakenIn } from './answer.js';

/** Points an octave of the drawn curves: enough that they show no corners. */
const POINTS_PER_OCTAVE = 48;

/** The grid of the picture; the reach is judged over the same range. */
export const PICTURE_GRID = logGrid(USUAL_RANGE.from, USUAL_RANGE.to, POINTS_PER_OCTAVE);

/** What the sizes alone say. */
export interface Measures {
  figures: RuleFigures;
  string: StringPath | null;
}

/** Everything computed of one mount: what the picture, the drawings and the sound take from a model. */
export interface Computed extends Measures {
  answer: Answer;
  /** On the picture's grid. */
  response: Response;
  /** |H| in dB on the picture's grid. */
  responseDb: Float64Array;
  /** What the audio branch convolves with and what the level figures are measured behind; made when it is asked for first. */
  readonly impulseResponse: Float32Array;
  /** How far down it stays within 10 dB of 0 dB, which is one level for all mounts; null where it lies lower throughout. */
  reachesDown: Hertz | null;
  /** The same from its own middle: below, it is softer than the rest of what one hears of it. */
  fallsOff: Hertz | null;
}

/** One setup as it stands on the shelf: what it is, and what was computed of it or why it cannot be. */
export interface Stand {
  index: number;
  /** The numeral on its disc and the key that hears it. */
  numeral: string;
  setup: Setup;
  installation: Installation;
  computed: Computed | null;
  /** One sentence where the mount cannot be built. */
  problem: string | null;
  /** Whether the chosen model will tell more of it soon: nothing yet, or a draft. */
  awaited: boolean;
  /** One sentence where the chosen model could not be solved: what is known of it, or the rule of thumb, stands in. */
  refused: string | null;
}

/** @throws RangeError with one plain sentence where the installation cannot be */
export function measure(installation: Installation, air: Air): Measures {
  checkInstallation(installation);
  return { figures: ruleFigures(installation, air), string: stringPath(installation) };
}

/**
 * The one way from an installation and what a model says of it to all that is shown and heard.
 * @throws RangeError with one plain sentence where the installation cannot be.
 */
export function compute(installation: Installation, air: Air, answer: Answer, sampleRate: Hertz): Computed {
  const measures = measure(installation, air);
  const response = answer.respond(PICTURE_GRID);
  let filter: Float32Array | null = null;
  return {
    ...measures,
    answer,
    response,
    responseDb: levelDb(response),
    get impulseResponse() {
      return (filter ??= filterFor(answer, sampleRate));
    },
    reachesDown: reachesDown(response),
    fallsOff: reachesDown(response, midLevel(response))
  };
}

/** What was computed of another size, beside what the new sizes say by themselves: the same filter, made at most once. */
export function withMeasures(computed: Computed, measures: Measures): Computed {
  return {
    ...measures,
    answer: computed.answer,
    response: computed.response,
    responseDb: computed.responseDb,
    get impulseResponse() {
      return computed.impulseResponse;
    },
    reachesDown: computed.reachesDown,
    fallsOff: computed.fallsOff
  };
}

/**
 * What was computed, where 0 dB is the endless plate of a speaker so many times less sensitive, and the low end is lifted
 * (same-drive.ts).
 */
export function driven(computed: Computed, takenIn: TakenIn, sampleRate: Hertz): Computed {
  const { figures, string } = computed;
  const { drive, lift } = takenIn;
  const answer = drivenAnswer(computed.answer, takenIn);
  const response = { ...computed.response, ...takenInto(computed.response, takenIn) };
  let filter: Float32Array | null = null;
  return {
    figures,
    string,
    fallsOff: lift ? reachesDown(response, midLevel(response)) : computed.fallsOff,
    reachesDown: reachesDown(response),
    answer,
    response,
    responseDb: levelDb(response),
    get impulseResponse() {
      return (filter ??= lift
        ? filterFor(answer, sampleRate)
        : computed.impulseResponse.map((sample) => sample * drive));
    }
  };
}

/** The FIR of an answer at a sample rate. */
export function filterFor(answer: Answer, sampleRate: Hertz): Float32Array {
  return impulseResponse(answer.respond(fftFrequencies(tapsFor(sampleRate), sampleRate)));
}
