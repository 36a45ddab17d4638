import type { ComplexArray } from './complex-array.js';
import { pivotedSolve } from './pivoted-solve.js';

export interface Solved {
  x: ComplexArray;
  /** max |b − A·x| over max |b|. */
  residual: number;
  /** Which of the two methods gave x. */
  method: 'symmetric' | 'pivoted';
}

/** A residual above this sends the system to the pivoted solver. */
const ACCEPTED = 1e-8;

/**
 * Solves A·x = b for a complex symmetric A (not Hermitian) by A = L·D·Lᵀ without pivoting, four columns at a time.
 * That is not safe for every such matrix, so the residual is computed; if it exceeds 10⁻⁸ the system is solved
 * again with row exchanges. Several right sides share the factors.
 *
 * @param a row after row, n × n; only the upper triangle j ≥ i is read; overwritten by nothing
 * @param sides one or more right sides b of n real numbers
 * @returns one solution a side
 * @throws RangeError if the matrix is singular for both methods
 */
export function symmetricSolve(a: ComplexArray, sides: readonly Float64Array[]): Solved[] {
  const re = a.re.slice();
  const im = a.im.slice();
  factor(re, im, sides[0].length);
  return sides.map((b) => {
    const x = substitute(re, im, b);
    const residual = residualOf(a, b, x);
    if (residual <= ACCEPTED) return { x, residual, method: 'symmetric' };
    const y = pivotedSolve(a, b);
    return { x: y, residual: residualOf(a, b, y), method: 'pivoted' };
  });
}

/** Upper triangle: D on the diagonal, D·Lᵀ right of it. */
function factor(re: Float64Array, im: Float64Array, n: number): void {
  const m = new Float64Array(8);
  for (let k = 0; k < n; k += 4) {
    const width = Math.min(4, n - k);
    for (let p = k; p < k + width; p++)
      for (let i = p + 1; i < k + width; i++) {
        quotient(re, im, p * n + i, p * n + p, m, 0);
        subtractOne(re, im, m, p * n, i * n, i, n);
      }
    for (let i = k + 4; i < n; i++) {
      for (let p = 0; p < 4; p++) quotient(re, im, (k + p) * n + i, (k + p) * n + k + p, m, 2 * p);
      subtractFour(re, im, m, k * n, i * n, i, n);
    }
  }
}

/** m[slot] + j·m[slot + 1] = element over pivot */
function quotient(
  re: Float64Array,
  im: Float64Array,
  element: number,
  pivot: number,
  m: Float64Array,
  slot: number
): void {
  const dr = re[pivot];
  const di = im[pivot];
  const scale = 1 / (dr * dr + di * di);
  m[slot] = (re[element] * dr + im[element] * di) * scale;
  m[slot + 1] = (im[element] * dr - re[element] * di) * scale;
}

/** From the row at `to`, columns `from` onward, subtracts m times the row at `source`. */
function subtractOne(
  re: Float64Array,
  im: Float64Array,
  m: Float64Array,
  source: number,
  to: number,
  from: number,
  n: number
): void {
  const a = m[0];
  const b = m[1];
  for (let j = from; j < n; j++) {
    const u = re[source + j];
    const v = im[source + j];
    re[to + j] -= a * u - b * v;
    im[to + j] -= a * v + b * u;
  }
}

/** The same for four rows from `source` on with their four multipliers: most of the time of a solution is spent here. */
function subtractFour(
  re: Float64Array,
  im: Float64Array,
  m: Float64Array,
  source: number,
  to: number,
  from: number,
  n: number
): void {
  const a0 = m[0];
  const b0 = m[1];
  const a1 = m[2];
  const b1 = m[3];
  const a2 = m[4];
  const b2 = m[5];
  const a3 = m[6];
  const b3 = m[7];
  for (let j = from; j < n; j++) {
    const s0 = source + j;
    const s1 = s0 + n;
    const s2 = s1 + n;
    const s3 = s2 + n;
    const u0 = re[s0];
    const v0 = im[s0];
    const u1 = re[s1];
    const v1 = im[s1];
    const u2 = re[s2];
    const v2 = im[s2];
    const u3 = re[s3];
    const v3 = im[s3];
    re[to + j] -= a0 * u0 - b0 * v0 + a1 * u1 - b1 * v1 + a2 * u2 - b2 * v2 + a3 * u3 - b3 * v3;
    im[to + j] -= a0 * v0 + b0 * u0 + a1 * v1 + b1 * u1 + a2 * v2 + b2 * u2 + a3 * v3 + b3 * u3;
  }
}

function substitute(re: Float64Array, im: Float64Array, b: Float64Array): ComplexArray {
  const n = b.length;
  const x = { re: b.slice(), im: new Float64Array(n) };
  const y = new Float64Array(2);
  for (let k = 0; k < n; k++) {
    over(re, im, k * n + k, x.re[k], x.im[k], y);
    const yr = y[0];
    const yi = y[1];
    for (let i = k + 1; i < n; i++) {
      const ur = re[k * n + i];
      const ui = im[k * n + i];
      x.re[i] -= ur * yr - ui * yi;
      x.im[i] -= ur * yi + ui * yr;
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    let sr = x.re[k];
    let si = x.im[k];
    for (let i = k + 1; i < n; i++) {
      const ur = re[k * n + i];
      const ui = im[k * n + i];
      sr -= ur * x.re[i] - ui * x.im[i];
      si -= ur * x.im[i] + ui * x.re[i];
    }
    over(re, im, k * n + k, sr, si, y);
    x.re[k] = y[0];
    x.im[k] = y[1];
  }
  return x;
}

/** out = (ar + j·ai) over the pivot */
function over(
  re: Float64Array,
  im: Float64Array,
  pivot: number,
  ar: number,
  ai: number,
  out: Float64Array
): void {
  const dr = re[pivot];
  const di = im[pivot];
  const scale = 1 / (dr * dr + di * di);
  out[0] = (ar * dr + ai * di) * scale;
  out[1] = (ai * dr - ar * di) * scale;
}

function residualOf(a: ComplexArray, b: Float64Array, x: ComplexArray): number {
  const n = b.length;
  const re = b.slice();
  const im = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let sr = 0;
    let si = 0;
    for (let j = i; j < n; j++) {
      const ar = a.re[i * n + j];
      const ai = a.im[i * n + j];
      sr += ar * x.re[j] - ai * x.im[j];
      si += ar * x.im[j] + ai * x.re[j];
      if (j === i) continue;
      re[j] -= ar * x.re[i] - ai * x.im[i];
      im[j] -= ar * x.im[i] + ai * x.re[i];
    }
    re[i] -= sr;
    im[i] -= si;
  }
  let most = 0;
  let scale = 0;
  for (let i = 0; i < n; i++) {
    const miss = Math.hypot(re[i], im[i]);
    // NaN must not pass as a small residual
    most = miss > most || Number.isNaN(miss) ? miss : most;
    scale = Math.max(scale, Math.abs(b[i]));
  }
  return most === 0 ? 0 : most / scale;
}
