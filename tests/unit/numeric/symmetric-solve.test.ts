import { describe, expect, it } from 'vitest';
import { random } from '../../../src/lib/sounds/blocks/random.js';
import { complexArray } from '../../../src/lib/numeric/complex-array.js';
import { pivotedSolve } from '../../../src/lib/numeric/pivoted-solve.js';
import { symmetricSolve } from '../../../src/lib/numeric/symmetric-solve.js';
import { close } from '../../helpers/close.js';

function system(n: number) {
  const { gaussian } = random(n);
  const a = complexArray(n * n);
  const x = complexArray(n);
  for (let i = 0; i < n; i++) {
    x.re[i] = gaussian();
    for (let j = i; j < n; j++) {
      a.re[i * n + j] = a.re[j * n + i] = gaussian() + (i === j ? 2 * Math.sqrt(n) : 0);
      a.im[i * n + j] = a.im[j * n + i] = gaussian();
    }
  }
  return { a, x };
}

describe('symmetricSolve', () => {
  for (const n of [1, 2, 3, 4, 5, 7, 8, 33, 90])
    it(`solves ${n} equations, and so does the pivoted solver`, () => {
      const { a } = system(n);
      const b = Float64Array.from({ length: n }, (_, i) => Math.cos(3 * i));
      const [{ x, residual, method }] = symmetricSolve(a, [b]);
      expect(method).toBe('symmetric');
      expect(residual).toBeLessThan(1e-10);
      const y = pivotedSolve(a, b);
      for (let i = 0; i < n; i++) {
        close(x.re[i], y.re[i], { rel: 1e-9, abs: 1e-10, because: 'two methods, rounding' });
        close(x.im[i], y.im[i], { rel: 1e-9, abs: 1e-10, because: 'two methods, rounding' });
      }
    });

  it('reads the upper triangle only and changes nothing', () => {
    const { a } = system(6);
    const before = a.re.slice();
    const b = new Float64Array(6).fill(1);
    const [{ x }] = symmetricSolve(a, [b]);
    expect(a.re).toEqual(before);
    expect(b).toEqual(new Float64Array(6).fill(1));
    for (let i = 0; i < 6; i++) for (let j = 0; j < i; j++) a.re[i * 6 + j] = a.im[i * 6 + j] = NaN;
    expect(symmetricSolve(a, [b])[0].x).toEqual(x);
  });

  it('falls back to row exchanges where a pivot is 0', () => {
    const a = { re: Float64Array.of(0, 1, 1, 0), im: Float64Array.of(0, 0.5, 0.5, 0) };
    const [{ x, method, residual }] = symmetricSolve(a, [Float64Array.of(1, 2)]);
    expect(method).toBe('pivoted');
    expect(residual).toBeLessThan(1e-12);
    close(x.re[0], 1.6, { abs: 1e-12, because: '2/(1 + j/2)' });
    close(x.im[0], -0.8, { abs: 1e-12, because: '2/(1 + j/2)' });
  });

  it('says when the equations are singular', () => {
    const a = { re: Float64Array.of(1, 1, 1, 1), im: new Float64Array(4) };
    expect(() => symmetricSolve(a, [Float64Array.of(1, 2)])).toThrow(/singular/);
  });
});
