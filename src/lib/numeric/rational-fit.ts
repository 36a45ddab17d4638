import { complexArray, type ComplexArray } from './complex-array.js';
import type { Hertz } from '../units.js';
import { leastVector } from './least-vector.js';

/** Rational functions of one denominator through sampled responses, valid from 0 to the highest sample. */
export interface RationalFit {
  /** Points of support, as frequencies of both signs, and their weights in the barycentric formula. */
  support: Float64Array;
  weight: ComplexArray;
  /** The values of every output at the support. */
  values: ComplexArray[];
  /** Largest miss at the samples, as a share of each output's largest modulus. */
  miss: number;
}

/**
 * The AAA algorithm (Y. Nakatsukasa, O. Sète, L. N. Trefethen, "The AAA algorithm for rational approximation", SIAM J. Sci.
 * Comput. 40 (2018) A1494) for several outputs of one system at once: they share their poles, and so the denominator. The
 * samples are taken at −f too, conjugate: the inverse transform is real, and frequencies below the lowest sample are
 * interpolated, not extrapolated. Each step takes the worst sample ±f into the support and finds the weights that
 * miss least at all others.
 *
 * @param frequency ascending, above 0 Hz
 * @param outputs of the same length each; symmetric, H(−f) = conj H(f)
 * @param tolerance stop when no sample is missed by more than this share of its output's largest modulus
 * @param most at most this many pairs ±f in the support
 * @param exact samples, by their place in the grid, that are in the support in any case, so that the fit goes through them
 */
export function rationalFit(
  frequency: Float64Array,
  outputs: readonly ComplexArray[],
  tolerance: number,
  { most = frequency.length, exact = [] }: { most?: number; exact?: readonly number[] } = {}
): RationalFit {
  const m = frequency.length;
  const scale = outputs.map(({ re, im }) => {
    const largest = re.reduce((a, x, i) => Math.max(a, Math.hypot(x, im[i])), 0);
    return largest > 0 ? 1 / largest : 1;
  });
  const chosen: number[] = [...exact];
  const miss = startMisses(m, outputs, scale);
  let best: RationalFit | null = null;
  while (chosen.length < Math.min(m, most)) {
    let worst = -1;
    for (let i = 0; i < m; i++) if (!chosen.includes(i) && (worst < 0 || miss[i] > miss[worst])) worst = i;
    chosen.push(worst);
    // the least squares need as many rows as unknowns
    if (best && outputs.length * 2 * (m - chosen.length) < 2 * chosen.length) break;
    const fit = fitOn(frequency, outputs, scale, chosen);
    fit.miss = 0;
    const values = outputs.map(() => complexArray(1));
    const evaluate = evaluator(fit);
    for (let i = 0; i < m; i++) {
      if (chosen.includes(i)) continue;
      evaluate(frequency[i], values, 0);
      miss[i] = 0;
      outputs.forEach(({ re, im }, o) => {
        const off = Math.hypot(values[o].re[0] - re[i], values[o].im[0] - im[i]) * scale[o];
        miss[i] = Math.max(miss[i], Number.isFinite(off) ? off : Infinity);
      });
      fit.miss = Math.max(fit.miss, miss[i]);
    }
    if (!best || fit.miss < best.miss) best = fit;
    if (best.miss <= tolerance) break;
  }
  return best!;
}

/** The outputs of a fit on a grid within 0 … the highest sample. */
export function evaluateFit(fit: RationalFit, frequency: Float64Array): ComplexArray[] {
  const out = fit.values.map(() => complexArray(frequency.length));
  const at = evaluator(fit);
  for (let i = 0; i < frequency.length; i++)
    if (i > 0 && frequency[i] === frequency[i - 1])
      for (const { re, im } of out) [re[i], im[i]] = [re[i - 1], im[i - 1]];
    else at(frequency[i], out, i);
  return out;
}

/**
 * Σ w_j·f_j/(f − f_j) over Σ w_j/(f − f_j), or f_j itself at a point of support, for one f after another: writes the outputs at
 * f to their place `at`.
 */
function evaluator({
  support,
  weight,
  values
}: RationalFit): (f: Hertz, out: ComplexArray[], at: number) => void {
  const n = support.length;
  // w_j and all w_j·f_j side by side, real and imaginary
  const width = 2 + 2 * values.length;
  const terms = new Float64Array(n * width);
  for (let j = 0; j < n; j++) {
    const [wr, wi] = [weight.re[j], weight.im[j]];
    terms.set([wr, wi], j * width);
    values.forEach(({ re, im }, o) =>
      terms.set([wr * re[j] - wi * im[j], wr * im[j] + wi * re[j]], j * width + 2 + 2 * o)
    );
  }
  const sums = new Float64Array(width);
  return (f, out, at) => {
    sums.fill(0);
    for (let j = 0, next = 0; j < n; j++) {
      const step = f - support[j];
      if (step === 0) {
        for (let o = 0; o < out.length; o++)
          [out[o].re[at], out[o].im[at]] = [values[o].re[j], values[o].im[j]];
        return;
      }
      const share = 1 / step;
      for (let c = 0; c < width; c++) sums[c] += terms[next++] * share;
    }
    const [dr, di] = sums;
    const square = dr * dr + di * di;
    for (let o = 0; o < out.length; o++) {
      const nr = sums[2 + 2 * o];
      const ni = sums[3 + 2 * o];
      out[o].re[at] = (nr * dr + ni * di) / square;
      out[o].im[at] = (ni * dr - nr * di) / square;
    }
  };
}

/** Before the first step: the distance from the mean of all samples. */
function startMisses(m: number, outputs: readonly ComplexArray[], scale: number[]): Float64Array {
  const miss = new Float64Array(m);
  outputs.forEach(({ re, im }, o) => {
    // the mean over ±f is real
    const mean = re.reduce((a, x) => a + x, 0) / m;
    for (let i = 0; i < m; i++) miss[i] = Math.max(miss[i], Math.hypot(re[i] - mean, im[i]) * scale[o]);
  });
  return miss;
}

function fitOn(
  frequency: Float64Array,
  outputs: readonly ComplexArray[],
  scale: number[],
  chosen: number[]
): RationalFit {
  const columns = 2 * chosen.length;
  const support = new Float64Array(columns);
  const values = outputs.map(() => complexArray(columns));
  chosen.forEach((i, j) => {
    support[2 * j] = frequency[i];
    support[2 * j + 1] = -frequency[i];
    outputs.forEach(({ re, im }, o) => {
      values[o].re.fill(re[i], 2 * j, 2 * j + 2);
      values[o].im[2 * j] = im[i];
      values[o].im[2 * j + 1] = -im[i];
    });
  });
  const others = [...frequency.keys()].filter((i) => !chosen.includes(i));
  const rows = Math.max(columns, 2 * others.length * outputs.length);
  const loewner = complexArray(rows * columns);
  for (let j = 0; j < columns; j++) {
    let at = j * rows;
    outputs.forEach(({ re, im }, o) => {
      for (const i of others)
        for (const side of [1, -1]) {
          const over = scale[o] / (side * frequency[i] - support[j]);
          loewner.re[at] = (re[i] - values[o].re[j]) * over;
          loewner.im[at++] = (side * im[i] - values[o].im[j]) * over;
        }
    });
  }
  return { support, weight: leastVector(loewner, rows, columns), values, miss: 0 };
}
