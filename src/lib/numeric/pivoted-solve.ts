import type { ComplexArray } from './complex-array.js';

/**
 * Solves A·x = b for a complex symmetric A by Gaussian elimination with row exchanges (G. H. Golub and C. F. Van Loan,
 * Matrix Computations, §3.4, section from memory): three times the work of `symmetricSolve`, and safe.
 *
 * @param a row after row, n × n; only the upper triangle j ≥ i is read
 * @throws RangeError if the matrix is singular
 */
export function pivotedSolve(a: ComplexArray, b: Float64Array): ComplexArray {
  const n = b.length;
  const rows = Array.from({ length: n }, (_, i) => {
    const re = new Float64Array(n + 1);
    const im = new Float64Array(n + 1);
    for (let j = 0; j < n; j++) {
      const at = i <= j ? i * n + j : j * n + i;
      re[j] = a.re[at];
      im[j] = a.im[at];
    }
    re[n] = b[i];
    return { re, im };
  });
  for (let k = 0; k < n; k++) {
    let best = k;
    const size = (i: number) => Math.hypot(rows[i].re[k], rows[i].im[k]);
    for (let i = k + 1; i < n; i++) if (size(i) > size(best)) best = i;
    [rows[k], rows[best]] = [rows[best], rows[k]];
    const pivot = rows[k];
    const square = pivot.re[k] ** 2 + pivot.im[k] ** 2;
    if (!(square > 0 && square < Infinity))
      throw new RangeError('the equations of the wave solution are singular');
    for (let i = k + 1; i < n; i++) {
      const { re, im } = rows[i];
      const lr = (re[k] * pivot.re[k] + im[k] * pivot.im[k]) / square;
      const li = (im[k] * pivot.re[k] - re[k] * pivot.im[k]) / square;
      for (let j = k + 1; j <= n; j++) {
        re[j] -= lr * pivot.re[j] - li * pivot.im[j];
        im[j] -= lr * pivot.im[j] + li * pivot.re[j];
      }
    }
  }
  const x = { re: new Float64Array(n), im: new Float64Array(n) };
  for (let k = n - 1; k >= 0; k--) {
    const { re, im } = rows[k];
    let [sr, si] = [re[n], im[n]];
    for (let j = k + 1; j < n; j++) {
      sr -= re[j] * x.re[j] - im[j] * x.im[j];
      si -= re[j] * x.im[j] + im[j] * x.re[j];
    }
    const square = re[k] ** 2 + im[k] ** 2;
    x.re[k] = (sr * re[k] + si * im[k]) / square;
    x.im[k] = (si * re[k] - sr * im[k]) / square;
  }
  return x;
}
