import type { Air } from '../acoustics/air.js';
import type { Installation } from '../acoustics/installation.js';
import type { Listener } from '../acoustics/listener.js';
import type { Response } from '../acoustics/response.js';
import { ruleDriven, ruleOfThumb } from '../acoustics/rule/rule-of-thumb.js';
import type { DrivenCones } from '../acoustics/speaker/driven-cones.js';
import { type Lift, liftResponse } from '../acoustics/speaker/lift.js';
import type { ModelName } from '../file/bench-file.js';
import type { ComplexArray } from '../numeric/complex-array.js';
import { multiply } from '../numeric/multiply.js';
import { scaled } from '../numeric/scaled.js';
import type { Hertz } from '../units.js';
import type { AccuracyName } from '../waves/mesh/accuracy.js';
import { heardResponse, type HeardWaves } from '../waves/curve/heard-waves.js';

/** The speaker with its own response, or the mount alone: a cone of the same velocity at all frequencies. */
export type SpeakerKind = 'ideal' | 'full';

/** A response, and the acoustic load of the cone (both faces, Pa·s/m³) where the model knows it. */
export interface Responded extends Response {
  load?: ComplexArray;
}

/** What a model says of one installation where one listens: everything shown, heard and printed is made from it. */
export interface Answer {
  /** For words and for what the table of models says of it. */
  model: ModelName;
  /** How finely it was solved; null for a closed form. */
  accuracy: AccuracyName | null;
  /** Whether its model will give a better one: a draft. */
  provisional: boolean;
  /** Up to where it is to be believed; above, it is an estimate. Infinity for a closed form. */
  solvedTo: Hertz;
  /** The factor that its response has taken in (`drivenAnswer`): 1 where 0 dB is the speaker's own endless plate. */
  drive: number;
  /** What lifts the low end before the amplifier, where its response has taken that in. */
  lift: Lift | null;
  /** The response on any grid from 0 Hz. */
  respond: (frequency: Float64Array) => Responded;
  /** How a voltage at the terminals moves the cones, on any grid from 0 Hz: behind the lift. */
  driven: (frequency: Float64Array) => DrivenCones;
}

/** What an answer's response takes in besides its mount. */
export type TakenIn = Pick<Answer, 'drive' | 'lift'>;

/**
 * The same answer where 0 dB is the endless plate of a speaker so many times less sensitive, and the low end is lifted; the load
 * stays.
 *
 * @param answer one that has taken in no lift
 */
export function drivenAnswer(answer: Answer, { drive, lift }: TakenIn): Answer {
  if (drive === 1 && !lift) return answer;
  return {
    ...answer,
    drive: answer.drive * drive,
    lift,
    respond: (frequency) => {
      const response = answer.respond(frequency);
      return { ...response, ...takenInto(response, { drive, lift }) };
    }
  };
}

/** A response with what it takes in, as a new one. */
export function takenInto(response: Response, { drive, lift }: TakenIn): ComplexArray {
  const driven = scaled(response, drive);
  return lift ? multiply(driven, liftResponse(lift, response.frequency)) : driven;
}

/** A response as it is of the mount and its own speaker, without what it has taken in. */
export function takenOut(response: Response, { drive, lift }: TakenIn): Response {
  // A shelf down is one over the shelf up.
  const lowered = lift && { ...lift, gainDb: -lift.gainDb };
  return { ...response, ...takenInto(response, { drive: 1 / drive, lift: lowered }) };
}

/** @throws RangeError as `ruleOfThumb` does, when it is asked to respond */
export function ruleAnswer(
  installation: Installation,
  air: Air,
  listener: Listener,
  speaker: SpeakerKind = 'full'
): Answer {
  return {
    model: 'rule',
    accuracy: null,
    provisional: false,
    solvedTo: Infinity,
    drive: 1,
    lift: null,
    respond: (frequency) => ruleOfThumb(installation, air, listener, frequency, speaker),
    driven: (frequency) => ruleDriven(installation, air, frequency)
  };
}

/** @throws RangeError as `heardResponse` does, when it is asked to respond */
export function waveAnswer(
  heard: HeardWaves,
  accuracy: AccuracyName,
  installation: Installation,
  air: Air,
  speaker: SpeakerKind = 'full'
): Answer {
  return {
    model: 'wave',
    accuracy,
    provisional: accuracy !== 'full',
    solvedTo: heard.highest,
    drive: 1,
    lift: null,
    respond: (frequency) => heardResponse(heard, installation, air, frequency, speaker),
    driven: (frequency) => heardResponse(heard, installation, air, frequency).driven!
  };
}
