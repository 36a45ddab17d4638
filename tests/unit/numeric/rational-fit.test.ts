import { describe, expect, it } from 'vitest';
import { complexArray } from '../../../src/lib/numeric/complex-array.js';
import { evaluateFit, rationalFit } from '../../../src/lib/numeric/rational-fit.js';
import { close } from '../../helpers/close.js';

/** A sum of resonances r/(1 + j·Q·(f/f0 − f0/f)), real in time. */
function resonances(frequency: Float64Array, rows: readonly [number, number, number][]) {
  const out = complexArray(frequency.length);
  frequency.forEach((f, i) => {
    for (const [f0, q, r] of rows) {
      const x = q * (f / f0 - f0 / f);
      out.re[i] += r / (1 + x * x);
      out.im[i] -= (r * x) / (1 + x * x);
    }
  });
  return out;
}

const grid = Float64Array.from({ length: 400 }, (_, i) => 10 + 24.9 * i);
const samples = Float64Array.from({ length: 24 }, (_, i) => 100 + 430 * i);

describe('rationalFit', () => {
  const first = [
    [700, 3, 1],
    [2500, 8, 0.5],
    [6100, 15, -0.7]
  ] as [number, number, number][];
  const second = first.map(([f0, q, r]) => [f0, q, r * r - 0.2] as [number, number, number]);
  const outputs = [first, second].map((rows) => resonances(samples, rows));

  it('finds sums of resonances exactly, also below the lowest sample', () => {
    const fit = rationalFit(samples, outputs, 1e-10);
    expect(fit.miss).toBeLessThan(1e-10);
    expect(fit.support.length / 2).toBeLessThan(7);
    const got = evaluateFit(fit, grid);
    [first, second].forEach((rows, o) => {
      const truth = resonances(grid, rows);
      grid.forEach((_, i) => {
        close(got[o].re[i], truth.re[i], { abs: 1e-7, because: 'a rational function of degree 6' });
        close(got[o].im[i], truth.im[i], { abs: 1e-7, because: 'a rational function of degree 6' });
      });
    });
  });

  it('is real at 0 Hz and gives back the samples', () => {
    const fit = rationalFit(samples, outputs, 1e-10);
    const [a] = evaluateFit(fit, Float64Array.of(0, ...samples));
    close(a.im[0], 0, { abs: 1e-8, because: 'conjugate at −f' });
    samples.forEach((_, i) => {
      close(a.re[i + 1], outputs[0].re[i], { abs: 1e-9, because: 'tolerance' });
      close(a.im[i + 1], outputs[0].im[i], { abs: 1e-9, because: 'tolerance' });
    });
  });

  it('stops at the degree it is allowed and tells the miss', () => {
    const fit = rationalFit(samples, outputs, 1e-10, { most: 2 });
    expect(fit.support.length).toBe(4);
    expect(fit.miss).toBeGreaterThan(0.01);
  });

  it('goes through the samples it is told to', () => {
    const fit = rationalFit(samples, outputs, 1e-3, { exact: [0, 5] });
    const [a, b] = evaluateFit(fit, Float64Array.of(samples[0], samples[5]));
    expect([a.re[0], a.im[0], b.re[1], b.im[1]]).toEqual([
      outputs[0].re[0],
      outputs[0].im[0],
      outputs[1].re[5],
      outputs[1].im[5]
    ]);
  });

  it('interpolates a delay, which is not rational', () => {
    const delay = (frequency: Float64Array) => ({
      re: frequency.map((f) => Math.cos(f / 1500)),
      im: frequency.map((f) => -Math.sin(f / 1500))
    });
    const [got] = evaluateFit(rationalFit(samples, [delay(samples)], 1e-6), grid);
    const truth = delay(grid);
    grid.forEach((_, i) =>
      close(Math.hypot(got.re[i] - truth.re[i], got.im[i] - truth.im[i]), 0, {
        abs: 1e-4,
        because: 'tolerance, between the samples'
      })
    );
  });
});
