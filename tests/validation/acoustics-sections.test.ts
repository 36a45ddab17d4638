import { describe, it } from 'vitest';
import { firstOrderHighPass, firstOrderSection } from '../../src/lib/acoustics/rule/first-order.js';
import { secondOrderHighPass } from '../../src/lib/acoustics/rule/second-order.js';
import type { ComplexArray } from '../../src/lib/numeric/complex-array.js';
import { logGrid } from '../../src/lib/numeric/log-grid.js';
import { close } from '../helpers/close.js';
import reference from '../reference/closed-forms.json';

const frequency = Float64Array.from(reference.frequency);

function agree(got: ComplexArray, expected: { re: number[]; im: number[] }, what: string): void {
  for (let i = 0; i < frequency.length; i++) {
    const size = Math.hypot(expected.re[i], expected.im[i]);
    const because = `${what} at ${frequency[i]} Hz: both in double precision`;
    close(got.re[i], expected.re[i], { abs: 1e-12 * size, because });
    close(got.im[i], expected.im[i], { abs: 1e-12 * size, because });
  }
}

describe('analog sections against scipy.signal.freqs (tests/reference/closed-forms.py)', () => {
  it('first-order high-pass', () => {
    for (const row of reference.firstOrder)
      agree(firstOrderHighPass(frequency, row.corner), row, `corner ${row.corner}`);
  });

  it('first-order shelf', () => {
    for (const row of reference.shelf)
      agree(firstOrderSection(frequency, row.zero, row.pole), row, `zero ${row.zero}, pole ${row.pole}`);
  });

  it('second-order high-pass', () => {
    for (const row of reference.secondOrder)
      agree(secondOrderHighPass(frequency, row.f0, row.q), row, `f0 ${row.f0}, Q ${row.q}`);
  });
});

/** R. Bristow-Johnson, "Audio EQ Cookbook", W3C Group Note (2021): HPF, H at the frequency f. */
function cookbookHighPass(f: number, f0: number, q: number, sampleRate: number): [re: number, im: number] {
  const w0 = (2 * Math.PI * f0) / sampleRate;
  const alpha = Math.sin(w0) / (2 * q);
  const b = [(1 + Math.cos(w0)) / 2, -(1 + Math.cos(w0)), (1 + Math.cos(w0)) / 2];
  const a = [1 + alpha, -2 * Math.cos(w0), 1 - alpha];
  const sum = (c: number[]) => {
    const turn = (2 * Math.PI * f) / sampleRate;
    const re = c.reduce((s, x, n) => s + x * Math.cos(n * turn), 0);
    const im = c.reduce((s, x, n) => s - x * Math.sin(n * turn), 0);
    return [re, im];
  };
  const [nr, ni] = sum(b);
  const [dr, di] = sum(a);
  const scale = 1 / (dr * dr + di * di);
  return [(nr * dr + ni * di) * scale, (ni * dr - nr * di) * scale];
}

describe('second-order high-pass against the W3C Audio EQ Cookbook', () => {
  const sampleRate = 48000;
  const cases = [
    [350, 1.59],
    [488.8, 2.22],
    [660, Math.SQRT1_2]
  ];

  it('is the same at the frequencies that the bilinear transform stands for', () => {
    for (const [f0, q] of cases)
      for (const f of logGrid(50, 12000, 6)) {
        // the transform, prewarped at f0, puts the analog response of this frequency at f
        const warped = (f0 * Math.tan((Math.PI * f) / sampleRate)) / Math.tan((Math.PI * f0) / sampleRate);
        const h = secondOrderHighPass(Float64Array.of(warped), f0, q);
        const [re, im] = cookbookHighPass(f, f0, q, sampleRate);
        const size = Math.hypot(re, im);
        const because = `f0 ${f0}, Q ${q}, ${f} Hz: identity; the difference of near-equal terms costs digits low down`;
        close(h.re[0], re, { abs: 1e-7 * size, because });
        close(h.im[0], im, { abs: 1e-7 * size, because });
      }
  });

  it('agrees within 0.05 dB to 2 kHz, where the warping is still small', () => {
    for (const [f0, q] of cases)
      for (const f of logGrid(50, 2000, 6)) {
        const h = secondOrderHighPass(Float64Array.of(f), f0, q);
        const [re, im] = cookbookHighPass(f, f0, q, sampleRate);
        close(20 * Math.log10(Math.hypot(h.re[0], h.im[0]) / Math.hypot(re, im)), 0, {
          abs: 0.05,
          because: `f0 ${f0}, Q ${q}, ${f} Hz: warping is (π·f/fs)²/3 = 0.6 % of the frequency at 2 kHz`
        });
      }
  });
});
