import { soundSpeed, type Air } from '../../acoustics/air.js';
import { checkWithin, LIMITS } from '../../acoustics/mounts/check-installation.js';
import type { Installation } from '../../acoustics/installation.js';
import type { Listener } from '../../acoustics/listener.js';
import type { Response } from '../../acoustics/response.js';
import { complexArray, type ComplexArray } from '../../numeric/complex-array.js';
import { scaled } from '../../numeric/scaled.js';
import { sum } from '../../numeric/sum.js';
import { multiply } from '../../numeric/multiply.js';
import { accelerations, type DrivenCones, drivenCones } from '../../acoustics/speaker/driven-cones.js';
import { evaluateFit, rationalFit, type RationalFit } from '../../numeric/rational-fit.js';
import type { Decibels, Hertz, Kilograms, MetresPerSecond, SquareMetres } from '../../units.js';
import { fromEven, inverse, lossTurn, lowEndOfLoad, toEven, turnedBy, type LoadLowEnd } from './even-form.js';
import { gather, TOLERANCE, type WaveCurve } from './wave-curve.js';
import { impedance, keepPassive, loadStiffness } from './load-curve.js';
import type { Complex } from '../../numeric/complex.js';
import { acousticLoad } from '../field/acoustic-load.js';
import { transferOn } from '../field/transfer.js';
import { waysTo, type Way } from '../field/ways.js';
import { type Ahead, aheadOf, goBeyond } from './beyond-solved.js';

/** A geometry solved once, of which every listener is read off. */
export interface SolvedWaves {
  /** Up to where the mesh follows the wavelength. */
  highest: Hertz;
  curve: WaveCurve;
  /** `freeAirMass` of the speaker. */
  airMass: Kilograms;
}

/**
 * What one listener hears of a solved geometry, at every frequency: plain data, a few kilobytes, fit to leave a worker. Sizes
 * and air are those it was solved for; the motor and the volume of the speaker's body are free.
 */
export interface HeardWaves {
  /**
   * Of the loads Z_11, or Z_11, Z_12, Z_22 of two cones, and of what is heard of each cone on each of the ways, in their even form and
   * turned by `turn` (`lossTurn`).
   */
  fit: RationalFit;
  turn: Complex;
  /** By how much each way is longer than the straight one, and the ratio of the straight one to it. */
  ways: Pick<Way, 'longer' | 'ratio'>[];
  /** How the load behaves at low frequency. */
  loadLow: LoadLowEnd;
  /** How what is heard behaves at low frequency. */
  low: 'rises' | 'finite';
  /** How many there are. */
  cones: number;
  /** Of each cone, what is known of it beyond `highest`. */
  ahead: Ahead[];
  /** Of a cone. */
  area: SquareMetres;
  airMass: Kilograms;
  highest: Hertz;
  interpolationErrorDb: Decibels;
  /** Unknowns of all systems solved at a frequency together. */
  unknowns: number;
  /** Number of frequencies solved. */
  solved: number;
}

/** A response with what is known about how it came about. */
export interface WaveResponse extends Response {
  /** Za of the first cone that moves alone, pressure over volume velocity, both faces, in Pa·s/m³; of a box it is infinite at 0 Hz. */
  load: ComplexArray;
  /** How a voltage moves the cones; nothing where they are said to move (`ideal`). */
  driven?: DrivenCones;
  /** Up to where it was solved; beyond, `goBeyond` says what is heard, and the load over jω is held. */
  highest: Hertz;
  interpolationErrorDb: Decibels;
  unknowns: number;
  solved: number;
}

/**
 * Reads one listener off a solved geometry.
 *
 * @param listener any angle; a distance of 0.01 m or more, measured from the middle of the cone, or far field
 * @throws RangeError for an angle or a distance beyond LIMITS
 */
export function hearWaves({ curve, highest, airMass }: SolvedWaves, listener: Listener): HeardWaves {
  checkListener(listener);
  const { problem } = curve;
  const { behind } = problem;
  const loadLow = lowEndOfLoad(behind, problem.patches.length);
  const turn = lossTurn(behind, problem.loss);
  const low = behind === 'open' && listener.distance === undefined ? 'rises' : 'finite';
  const ways = waysTo(problem, listener);
  const fit = rationalFit(
    curve.frequency,
    [
      ...loadPairs(problem.pistons.length).map(([at, by]) =>
        toEven(
          gather(curve.states, (state) => acousticLoad(problem, state, at, by)),
          curve.frequency,
          loadLow
        )
      ),
      ...[...problem.pistons.keys()].flatMap((piston) =>
        ways.map((way) =>
          toEven(
            gather(curve.states, (state) => transferOn(problem, state, way, piston)),
            curve.frequency,
            low
          )
        )
      )
    ].map((output) => turnedBy(output, turn)),
    TOLERANCE,
    { exact: [0, 1] }
  );
  return {
    fit,
    turn,
    ways: ways.map(({ longer, ratio }) => ({ longer, ratio })),
    loadLow,
    low,
    area: problem.pistons[0].area,
    airMass,
    highest,
    interpolationErrorDb: curve.interpolationErrorDb,
    cones: problem.pistons.length,
    ahead: aheadOf(problem, ways),
    unknowns: curve.states[0].jumps[0].reduce((sum, m) => sum + (m ? m.re.length : 0), 0),
    solved: curve.states.length
  };
}

/**
 * The response of a speaker where `hearWaves` listened, on any grid. 0 dB as in `waveSolution`.
 *
 * @param installation of the sizes that were solved
 * @param frequency Hz, each at least 0, any length; the response holds this same array as its grid, and what was
 * read off for it is kept as long as it is: do not change it
 * @throws RangeError for a moving mass below that of the air at the cone
 */
export function heardResponse(
  heard: HeardWaves,
  installation: Installation,
  air: Air,
  frequency: Float64Array,
  speaker: 'ideal' | 'full' = 'full'
): WaveResponse {
  for (const f of frequency)
    if (!(f >= 0 && f < Infinity)) throw new RangeError(`a frequency must be at least 0 Hz, got ${f}`);
  const { highest } = heard;
  const { held, loads, ofCones } = readingOf(heard, soundSpeed(air), frequency);
  const stiffness = loads.map((load) =>
    loadStiffness(installation, air, frequency, held, load, heard.loadLow)
  );
  const { speaker: own, second } = installation;
  const driven =
    speaker === 'full'
      ? drivenCones(frequency, own.motor, heard.area, heard.airMass, stiffness, second ?? null)
      : undefined;
  const h = driven
    ? sum(accelerations(driven).map((moved, cone) => multiply(moved, ofCones[cone])))
    : sum(ofCones.map((heardOf, cone) => scaled(heardOf, cone > 0 && second?.reversed ? -1 : 1)));
  const { interpolationErrorDb, unknowns, solved } = heard;
  return {
    frequency,
    re: h.re,
    im: h.im,
    load: impedance(stiffness[0], frequency),
    ...(driven && { driven }),
    highest,
    interpolationErrorDb,
    unknowns,
    solved
  };
}

/** What one listener hears on a grid, whatever drives the cones. Nobody changes it. */
interface Reading {
  c: MetresPerSecond;
  /** The grid, held at the highest frequency that was solved. */
  held: Float64Array;
  /** The even forms of the loads, as in `loadPairs`. */
  loads: ComplexArray[];
  /** Of each cone, on all ways together. */
  ofCones: ComplexArray[];
}

/** By what is heard and the grid: a speaker's values and what lifts or drives it are changed far more often than either. */
const readings = new WeakMap<HeardWaves, WeakMap<Float64Array, Reading>>();

function readingOf(heard: HeardWaves, c: MetresPerSecond, frequency: Float64Array): Reading {
  const ofHeard = readings.get(heard) ?? new WeakMap<Float64Array, Reading>();
  const known = ofHeard.get(frequency);
  if (known?.c === c) return known;
  const reading = read(heard, c, frequency);
  readings.set(heard, ofHeard.set(frequency, reading));
  return reading;
}

function read(heard: HeardWaves, c: MetresPerSecond, frequency: Float64Array): Reading {
  const { fit, loadLow, highest } = heard;
  const held = frequency.map((f) => Math.min(f, highest));
  const back = inverse(heard.turn);
  const outputs = evaluateFit(fit, held).map((output) => turnedBy(output, back));
  const pairs = loadPairs(heard.cones);
  pairs.forEach(([at, by], k) => {
    if (at !== by) return;
    const samples = turnedBy({ re: fit.values[k].re.slice(), im: fit.values[k].im.slice() }, back);
    keepPassive(outputs[k], held, samples, fit.support, loadLow);
  });
  const ofCones = Array.from({ length: heard.cones }, (_, cone) => {
    const from = pairs.length + cone * heard.ways.length;
    const even = outputs.slice(from, from + heard.ways.length);
    const low = even.map((output) => fromEven(output, held, heard.low));
    const all = together(low, heard.ways, held, c);
    goBeyond(all, frequency, highest, heard.ahead[cone], c);
    return all;
  });
  return { c, held, loads: outputs.slice(0, pairs.length), ofCones };
}

/** The elements of the symmetric matrix of loads, upper triangle: [pressed on, moving]. */
function loadPairs(cones: number): [number, number][] {
  return Array.from({ length: cones }, (_, by) => by).flatMap((by) =>
    Array.from({ length: cones - by }, (_, k): [number, number] => [by + k, by])
  );
}

/** What is heard on all ways: each of them times its ratio, as late as it is longer. */
function together(
  heard: readonly ComplexArray[],
  ways: HeardWaves['ways'],
  frequency: Float64Array,
  c: MetresPerSecond
): ComplexArray {
  const all = complexArray(frequency.length);
  ways.forEach(({ longer, ratio }, w) => {
    const { re, im } = heard[w];
    for (let i = 0; i < frequency.length; i++) {
      const phase = (-2 * Math.PI * frequency[i] * longer) / c;
      const cos = ratio * Math.cos(phase);
      const sin = ratio * Math.sin(phase);
      all.re[i] += re[i] * cos - im[i] * sin;
      all.im[i] += re[i] * sin + im[i] * cos;
    }
  });
  return all;
}

/** @throws RangeError for an angle or a distance beyond LIMITS, over a board for one below it */
export function checkListener({ angleDeg, distance, board }: Listener): void {
  if (board) checkWithin('angle of the listener over the board', angleDeg, LIMITS.angleOverBoardDeg, '°');
  else checkWithin('angle of the listener', angleDeg, [-360, 360], '°');
  if (distance !== undefined) checkWithin('distance of the listener', distance, LIMITS.distance, 'm');
}
