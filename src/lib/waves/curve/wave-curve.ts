import { complexArray, type ComplexArray } from '../../numeric/complex-array.js';
import type { Decibels, Hertz, MetresPerSecond } from '../../units.js';
import type { Complex } from '../../numeric/complex.js';
import { acousticLoad } from '../field/acoustic-load.js';
import { farField } from '../field/far-field.js';
import { boardOf } from '../field/ways.js';
import { solveWave, type WaveProblem, type WaveState } from '../solve/wave-problem.js';
import { lossTurn, lowEndOfLoad, toEven, turnedBy } from './even-form.js';
import { toEnd, type Steps } from './steps.js';
import { evaluateFit, rationalFit, type RationalFit } from '../../numeric/rational-fit.js';

/** A problem solved at some frequencies. */
export interface WaveCurve {
  problem: WaveProblem;
  c: MetresPerSecond;
  /** Ascending. */
  frequency: Float64Array;
  /** One per frequency. */
  states: WaveState[];
  /** Loads and far fields towards `STEERING` of all pistons at each frequency, in the form in which they are interpolated. */
  outputs: ComplexArray[];
  /** By how much the interpolation missed the frequencies taken in last, before it knew them; NaN before the first time. */
  interpolationErrorDb: Decibels;
}

/** The misses of the samples are below this share of the largest value. */
export const TOLERANCE = 1e-6;
/** Misses that end the search. */
const GOOD_DB: Decibels = 0.1;
/** Frequencies a round. */
const ROUND = 4;
const MOST = 96;

/**
 * Directions whose far field steers the choice of frequencies: along the axis, and halfway down to length and width. Over a board
 * the surface itself without its reflections is asked, and downward too: those are the two ways to a listener (`waysTo`).
 */
const STEERING: readonly (readonly [number, number, number])[] = [
  [0, 0, 1],
  [Math.SQRT1_2, 0, Math.SQRT1_2],
  [0, Math.SQRT1_2, Math.SQRT1_2]
];

/**
 * The first frequencies to solve: highest·sin(πi/2n), close together at the top and evenly spaced at the bottom (Chebyshev
 * points of −highest … highest, because samples count at −f too), and two low ones, from which the small resistance of
 * the load at low frequency is taken; three more with openings. Their number grows with the size of the mount in wavelengths.
 */
export function firstFrequencies(problem: WaveProblem, c: MetresPerSecond, highest: Hertz): Float64Array {
  const phase = (2 * Math.PI * highest * problem.pairs.size) / c;
  const n = 5 + Math.ceil(0.45 * phase);
  const chebyshev = Array.from({ length: n }, (_, i) => highest * Math.sin((Math.PI * (i + 1)) / (2 * n)));
  chebyshev[n - 1] = highest;
  // openings make corners and rings of their own there
  const low = problem.patches.length > 0 ? [0.005, 0.01, 0.02, 0.03, 0.05] : [0.01, 0.03];
  const least = chebyshev[0] / highest;
  return Float64Array.of(
    ...low.filter((share) => share < 0.8 * least).map((share) => share * highest),
    ...chebyshev
  );
}

/**
 * Solves a problem over 0 … `highest`: at `firstFrequencies`, then in rounds of four at `nextFrequencies`, until the fit
 * foretells a whole round within 0.1 dB (or 96 frequencies are solved; the error says so).
 *
 * @throws RangeError if the equations are singular
 */
export function solveCurve(problem: WaveProblem, c: MetresPerSecond, highest: Hertz): WaveCurve {
  return toEnd(solvingCurve(problem, c, highest));
}

/** `solveCurve` in steps of one frequency: gives the share that is done, 0 … 1, and at the end the curve. */
export function* solvingCurve(problem: WaveProblem, c: MetresPerSecond, highest: Hertz): Steps<WaveCurve> {
  const first = firstFrequencies(problem, c, highest);
  let curve = yield* solvingAt(problem, c, first, [0, first.length / (first.length + 2 * ROUND)]);
  for (let next = nextFrequencies(curve); next; next = nextFrequencies(curve)) {
    const { fit, frequency } = next;
    const done = curve.frequency.length;
    const total = Math.max(first.length + 2 * ROUND, done + ROUND);
    curve = takeIn(
      curve,
      fit,
      yield* solvingAt(problem, c, frequency, [done / total, (done + ROUND) / total])
    );
  }
  return curve;
}

/** Solves a problem at given frequencies, ascending and above 0 Hz: a part of a curve, to be joined by `takeIn`. */
function* solvingAt(
  problem: WaveProblem,
  c: MetresPerSecond,
  frequency: Float64Array,
  [from, to]: readonly [number, number]
): Steps<WaveCurve> {
  const states: WaveState[] = [];
  for (const f of frequency) {
    states.push(solveWave(problem, (2 * Math.PI * f) / c));
    yield from + ((to - from) * states.length) / frequency.length;
  }
  const outputs = steeringOutputs(problem, frequency, states);
  return { problem, c, frequency, states, outputs, interpolationErrorDb: NaN };
}

/** The frequencies that a curve needs next, and the fit that has to foretell them; null if it needs no more. */
export function nextFrequencies(curve: WaveCurve): { frequency: Float64Array; fit: RationalFit } | null {
  const { frequency, outputs, interpolationErrorDb } = curve;
  if (interpolationErrorDb <= GOOD_DB || frequency.length >= MOST) return null;
  const fit = rationalFit(frequency, outputs, TOLERANCE);
  const coarse = rationalFit(frequency, outputs, TOLERANCE, {
    most: Math.max(1, fit.support.length / 2 - 1)
  });
  const middles = Float64Array.from(frequency.subarray(1), (f, i) => (f + frequency[i]) / 2);
  const [a, b] = [evaluateFit(fit, middles), evaluateFit(coarse, middles)];
  const doubt = misses(a, b);
  const worst = [...middles.keys()].sort((i, j) => doubt[j] - doubt[i]).slice(0, ROUND);
  return { frequency: Float64Array.from(worst, (i) => middles[i]).sort(), fit };
}

/** A curve with more frequencies, and how well `fit` foretold them. */
export function takeIn(curve: WaveCurve, fit: RationalFit, added: WaveCurve): WaveCurve {
  const miss = Math.max(...misses(added.outputs, evaluateFit(fit, added.frequency)));
  const all = [...curve.frequency, ...added.frequency];
  const states = [...curve.states, ...added.states];
  const order = [...all.keys()].sort((i, j) => all[i] - all[j]);
  return {
    ...curve,
    frequency: Float64Array.from(order, (i) => all[i]),
    states: order.map((i) => states[i]),
    outputs: curve.outputs.map(({ re, im }, o) => {
      const [allRe, allIm] = [
        [...re, ...added.outputs[o].re],
        [...im, ...added.outputs[o].im]
      ];
      return { re: Float64Array.from(order, (i) => allRe[i]), im: Float64Array.from(order, (i) => allIm[i]) };
    }),
    interpolationErrorDb: 20 * Math.log10(1 + miss)
  };
}

/** One complex number of every state. */
export function gather(states: readonly WaveState[], f: (state: WaveState) => Complex): ComplexArray {
  const out = complexArray(states.length);
  states.forEach((state, i) => {
    const { re, im } = f(state);
    out.re[i] = re;
    out.im[i] = im;
  });
  return out;
}

/**
 * The largest |a − b|/|a| of all outputs at each frequency; where |a| is below a tenth of the output's mean modulus, in a
 * dip, over that tenth.
 */
function misses(a: readonly ComplexArray[], b: readonly ComplexArray[]): Float64Array {
  const most = new Float64Array(a[0].re.length);
  a.forEach(({ re, im }, o) => {
    const modulus = Float64Array.from(re, (x, i) => Math.hypot(x, im[i]));
    const least = (0.1 * modulus.reduce((sum, x) => sum + x, 0)) / modulus.length;
    for (let i = 0; i < re.length; i++) {
      const off = Math.hypot(re[i] - b[o].re[i], im[i] - b[o].im[i]) / Math.max(modulus[i], least);
      most[i] = Math.max(most[i], off);
    }
  });
  return most;
}

function steeringOutputs(problem: WaveProblem, frequency: Float64Array, states: WaveState[]): ComplexArray[] {
  const { behind } = problem;
  const turn = lossTurn(behind, problem.loss);
  const pistons = [...problem.pistons.keys()];
  const loads = pistons.flatMap((by) =>
    pistons.slice(by).map((at) =>
      toEven(
        gather(states, (state) => acousticLoad(problem, state, at, by)),
        frequency,
        lowEndOfLoad(behind, problem.patches.length)
      )
    )
  );
  const steering: readonly (readonly [number, number, number])[] = boardOf(problem)
    ? [...STEERING, ...STEERING.map(([x, y, z]) => [x, y, -z] as const)]
    : STEERING;
  const own = problem.surface.copies;
  const far = pistons.flatMap((piston) =>
    steering.map((direction) =>
      toEven(
        gather(states, (state) => farField(problem, state, direction, piston, own)),
        frequency,
        behind === 'open' ? 'rises' : 'finite'
      )
    )
  );
  return [...loads, ...far].map((output) => turnedBy(output, turn));
}
