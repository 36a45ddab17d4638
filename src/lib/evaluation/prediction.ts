import type { Air } from '../acoustics/air.js';
import type { Listener } from '../acoustics/listener.js';
import type { MountKind } from '../acoustics/mounts/mount.js';
import { checkDrive, driveVolts } from '../acoustics/speaker/drive.js';
import { type DrivenCones, electricalImpedance } from '../acoustics/speaker/driven-cones.js';
import { checkLift, type Lift, liftResponse } from '../acoustics/speaker/lift.js';
import { sensitivityDb } from '../acoustics/speaker/sensitivity.js';
import type { Response } from '../acoustics/response.js';
import type { BenchFile, BenchSpeaker, ModelName, Setup } from '../file/bench-file.js';
import { installationOf } from '../file/installation-of.js';
import type { Decibels, Degrees, Hertz, Radians } from '../units.js';
import type { AccuracyName } from '../waves/mesh/accuracy.js';
import { drivenAnswer, type SpeakerKind } from './answer.js';
import { models } from './models.js';
import { zeroAtListenerDb } from './sound-level.js';
import { answerNow, checkSolvable } from './solve-now.js';
import type { Question } from './wave-jobs.js';

/** What a bench is asked for; null where the file decides. */
export interface PredictionAsked {
  model: ModelName;
  /** Of a model that is solved; a closed form has no use for it. */
  accuracy: AccuracyName;
  speaker: SpeakerKind;
  frequency: Hertz[];
  angleDeg: Degrees | null;
  plane: Listener['plane'] | null;
  /** Volts (rms) at the terminals; where neither this nor the file says them, nothing is told of pascals, travel and current. */
  drive: number | null;
}

/** What `predict` prints as JSON. */
export interface Prediction {
  model: ModelName;
  /** Of a model that is solved only. */
  accuracy?: AccuracyName;
  speaker: SpeakerKind;
  /** From straight in front of the cone; over a board from straight up. */
  angleDeg: Degrees;
  /** There only where a board lies under the mounts. */
  board?: true;
  /** Volts (rms) for every setup, before the lift, where they are said. */
  drive?: number;
  /** What lifts the low end, where the file has a lift: it is in levels, phases and travel. */
  lift?: Lift;
  frequency: Hertz[];
  setups: SetupPrediction[];
}

export interface SetupPrediction {
  name: string;
  kind: MountKind;
  /** Of a speaker with motor values only: dB re 20 µPa in an endless plate, at 1 m for 1 V. */
  sensitivityDb?: Decibels;
  /** Of a model that is solved only: up to where it was solved. */
  highest?: Hertz;
  /** 20·log10|H|; null where H is 0. */
  levelDb: (Decibels | null)[];
  /** Within (−π, π]. */
  phaseRad: Radians[];
  /** Of a model that knows it only: the acoustic load of the cone, both faces, in Pa·s/m³. */
  load?: { re: number[]; im: number[] };
  /** At a stated drive only: dB re 20 µPa at the listener's distance; far away at 1 m. */
  levelAtListenerDb?: (Decibels | null)[];
  /** At a stated drive only: the peak displacement of a sine, in m; of two cones that of the one that moves more. */
  travel?: number[];
  /** At a stated drive only: what the amplifier sees, in Ω. */
  impedance?: { re: number[]; im: number[] };
}

/**
 * Predicts every setup of a bench at the frequencies asked for, in the order asked for. All setups are checked
 * before the first is computed.
 * @throws RangeError with one sentence, naming the setup that cannot be built
 */
export function predictBench(bench: BenchFile, asked: PredictionAsked): Prediction {
  const { model, accuracy, speaker, frequency } = asked;
  const { air } = bench;
  const volts = voltsOf(bench, asked);
  const lift = liftOf(bench, asked);
  const listener: Listener = {
    ...bench.listener,
    angleDeg: asked.angleDeg ?? bench.listener.angleDeg,
    plane: asked.plane ?? bench.listener.plane
  };
  // A response travels on an ascending grid, each frequency once; the answer is in the order of the question.
  const grid = Float64Array.from(new Set(frequency)).sort();
  const at = new Map([...grid].map((f, k) => [f, k]));
  const places = frequency.map((f) => at.get(f) ?? 0);
  models[model].checkListener(listener);
  const questions = bench.setups.map((setup, i) =>
    naming(setup, i, (): Question => {
      const question = { installation: installationOf(bench, setup, speaker), air, listener };
      checkSolvable(model, question, accuracy);
      return question;
    })
  );
  const isSolved = models[model].accuracies.length > 0;
  const setups = bench.setups.map((setup, i) =>
    naming(setup, i, (): SetupPrediction => {
      const own = answerNow(model, questions[i], accuracy, speaker);
      const answer = drivenAnswer(own, { drive: 1, lift });
      const { load, ...response } = answer.respond(grid);
      const levels = levelAndPhase(response, places);
      return {
        name: setup.name,
        kind: setup.mount.kind,
        ...sensitivityOf(bench.speakers[setup.speaker], air),
        ...(isSolved ? { highest: answer.solvedTo } : {}),
        ...levels,
        ...(load ? { load: { re: places.map((k) => load.re[k]), im: places.map((k) => load.im[k]) } } : {}),
        ...(volts === null
          ? {}
          : atDrive(
              volts,
              levels.levelDb,
              zeroAtListenerDb(questions[i].installation.speaker, air, volts, listener),
              answer.driven(grid),
              lift,
              places
            ))
      };
    })
  );
  return {
    model,
    ...(isSolved ? { accuracy } : {}),
    speaker,
    angleDeg: listener.angleDeg,
    ...(listener.board ? { board: true } : {}),
    ...(volts === null ? {} : { drive: volts }),
    ...(lift && { lift }),
    frequency,
    setups
  };
}

/** A motor that only stands in for one that is not there has no say. */
function sensitivityOf({ motor, cone }: BenchSpeaker, air: Air): Pick<SetupPrediction, 'sensitivityDb'> {
  return motor ? { sensitivityDb: sensitivityDb({ motor, cone }, air) } : {};
}

/**
 * The drive, where it is said and the speakers' own response is asked for.
 * @throws RangeError for one beyond `DRIVE_LIMITS`
 */
function voltsOf({ drive }: BenchFile, asked: PredictionAsked): number | null {
  if (asked.speaker === 'ideal') return null;
  const said = asked.drive === null ? drive : { volts: asked.drive };
  if (!said) return null;
  checkDrive(said);
  return driveVolts(said);
}

/** The lift, where the speakers' own response is asked for: the mount alone knows no voltage. */
function liftOf({ lift }: BenchFile, { speaker }: PredictionAsked): Lift | null {
  if (!lift || speaker === 'ideal') return null;
  checkLift(lift);
  return lift;
}

/**
 * What follows from a drive. A level is that of the response, on top of the half-space sensitivity at that voltage, at the distance
 * of the listener; a displacement is the peak of a sine, behind the lift.
 */
function atDrive(
  volts: number,
  levelDb: (Decibels | null)[],
  zeroDb: Decibels,
  driven: DrivenCones,
  lift: Lift | null,
  places: number[]
): Pick<SetupPrediction, 'levelAtListenerDb' | 'travel' | 'impedance'> {
  const impedance = electricalImpedance(driven);
  const lifted = lift && liftResponse(lift, driven.frequency);
  const peakVolts = (k: number): number =>
    Math.SQRT2 * volts * (lifted ? Math.hypot(lifted.re[k], lifted.im[k]) : 1);
  return {
    levelAtListenerDb: levelDb.map((level) => (level === null ? null : level + zeroDb)),
    travel: places.map(
      (k) => peakVolts(k) * Math.max(...driven.displacement.map(({ re, im }) => Math.hypot(re[k], im[k])))
    ),
    impedance: { re: places.map((k) => impedance.re[k]), im: places.map((k) => impedance.im[k]) }
  };
}

/** Puts the name of a setup before the sentence with which it is refused. */
function naming<T>({ name }: Setup, index: number, ask: () => T): T {
  try {
    return ask();
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new RangeError(`setups[${index}] (${name}): ${error.message}`, { cause: error });
  }
}

function levelAndPhase(
  { re, im }: Response,
  places: number[]
): Pick<SetupPrediction, 'levelDb' | 'phaseRad'> {
  return {
    levelDb: places.map((k) => {
      const level = 20 * Math.log10(Math.hypot(re[k], im[k]));
      return Number.isFinite(level) ? level : null;
    }),
    phaseRad: places.map((k) => {
      const phase = Math.atan2(im[k], re[k]);
      return phase === -Math.PI ? Math.PI : phase;
    })
  };
}
