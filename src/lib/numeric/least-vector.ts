import { complexArray, type ComplexArray } from './complex-array.js';

/**
 * The right singular vector of the smallest singular value of a tall complex matrix, of length 1: QR by Householder
 * reflections, then inverse iteration with R (G. H. Golub and C. F. Van Loan, Matrix Computations, §5.2 and §8.2, sections
 * from memory). Close singular values mix, which does no harm here: each of the mixture is as good.
 *
 * @param a rows × columns, column after column, rows at least columns; overwritten
 */
export function leastVector(a: ComplexArray, rows: number, columns: number): ComplexArray {
  triangulate(a, rows, columns);
  let largest = 0;
  for (let j = 0; j < columns; j++)
    largest = Math.max(largest, Math.hypot(a.re[j * rows + j], a.im[j * rows + j]));
  // a pivot of 0 would divide by 0; far below rounding it changes nothing
  for (let j = 0; j < columns; j++)
    if (Math.hypot(a.re[j * rows + j], a.im[j * rows + j]) < 1e-16 * largest) {
      a.re[j * rows + j] = 1e-16 * largest;
      a.im[j * rows + j] = 0;
    }
  const v = complexArray(columns);
  for (let j = 0; j < columns; j++) v.re[j] = 1 + j / columns;
  for (let turn = 0; turn < 4; turn++) {
    solveAdjoint(a, rows, columns, v);
    normalise(v);
    solveUpper(a, rows, columns, v);
    normalise(v);
  }
  return v;
}

function triangulate({ re, im }: ComplexArray, rows: number, columns: number): void {
  for (let k = 0; k < columns; k++) {
    const at = k * rows;
    let square = 0;
    for (let i = k; i < rows; i++) square += re[at + i] ** 2 + im[at + i] ** 2;
    const norm = Math.sqrt(square);
    if (norm === 0) continue;
    const head = Math.hypot(re[at + k], im[at + k]);
    const [cr, ci] = head > 0 ? [re[at + k] / head, im[at + k] / head] : [1, 0];
    // the reflector x + e^{j·arg x0}·|x|·e0, kept in the column below R
    re[at + k] += cr * norm;
    im[at + k] += ci * norm;
    const scale = 1 / (square + head * norm);
    for (let j = k + 1; j < columns; j++) {
      const to = j * rows;
      let [sr, si] = [0, 0];
      for (let i = k; i < rows; i++) {
        sr += re[at + i] * re[to + i] + im[at + i] * im[to + i];
        si += re[at + i] * im[to + i] - im[at + i] * re[to + i];
      }
      sr *= scale;
      si *= scale;
      for (let i = k; i < rows; i++) {
        re[to + i] -= sr * re[at + i] - si * im[at + i];
        im[to + i] -= sr * im[at + i] + si * re[at + i];
      }
    }
    re[at + k] = -cr * norm;
    im[at + k] = -ci * norm;
  }
}

/** Rᴴ·x = v */
function solveAdjoint({ re, im }: ComplexArray, rows: number, columns: number, v: ComplexArray): void {
  for (let j = 0; j < columns; j++) {
    let [sr, si] = [v.re[j], v.im[j]];
    for (let i = 0; i < j; i++) {
      const [ar, ai] = [re[j * rows + i], -im[j * rows + i]];
      sr -= ar * v.re[i] - ai * v.im[i];
      si -= ar * v.im[i] + ai * v.re[i];
    }
    divide(v, j, sr, si, re[j * rows + j], -im[j * rows + j]);
  }
}

/** R·x = v */
function solveUpper({ re, im }: ComplexArray, rows: number, columns: number, v: ComplexArray): void {
  for (let i = columns - 1; i >= 0; i--) {
    let [sr, si] = [v.re[i], v.im[i]];
    for (let j = i + 1; j < columns; j++) {
      const [ar, ai] = [re[j * rows + i], im[j * rows + i]];
      sr -= ar * v.re[j] - ai * v.im[j];
      si -= ar * v.im[j] + ai * v.re[j];
    }
    divide(v, i, sr, si, re[i * rows + i], im[i * rows + i]);
  }
}

function divide(v: ComplexArray, i: number, sr: number, si: number, dr: number, di: number): void {
  const square = dr * dr + di * di;
  v.re[i] = (sr * dr + si * di) / square;
  v.im[i] = (si * dr - sr * di) / square;
}

function normalise({ re, im }: ComplexArray): void {
  let square = 0;
  for (let i = 0; i < re.length; i++) square += re[i] * re[i] + im[i] * im[i];
  const scale = 1 / Math.sqrt(square);
  for (let i = 0; i < re.length; i++) {
    re[i] *= scale;
    im[i] *= scale;
  }
}
