import { expect, it } from 'vitest';
import { secondOrderHighPass } from '../../../../src/lib/acoustics/rule/second-order.js';
import { close } from '../../../helpers/close.js';

it('is j·Q at its resonance', () => {
  const h = secondOrderHighPass(Float64Array.of(350), 350, 1.59);
  close(h.re[0], 0, { abs: 1e-15, because: 's² + ω0² vanishes' });
  close(h.im[0], 1.59, { rel: 1e-15, because: '−ω0²/(jω0²/Q)' });
});

it('falls by 12 dB an octave below and is one above', () => {
  const h = secondOrderHighPass(Float64Array.of(0, 0.5, 1, 1e9), 350, 1.59);
  expect(Math.hypot(h.re[0], h.im[0])).toBe(0);
  close(h.re[2] / h.re[1], 4, { rel: 1e-4, because: 'twice the frequency, four times the pressure' });
  close(h.re[3], 1, { abs: 1e-9, because: 'limit' });
});

it('refuses a resonance or a quality factor that is none', () => {
  const f = new Float64Array(1);
  expect(() => secondOrderHighPass(f, 0, 1)).toThrow('the resonance must be above 0 Hz, got 0');
  expect(() => secondOrderHighPass(f, 350, -1)).toThrow('the quality factor must be above 0, got -1');
  expect(() => secondOrderHighPass(f, NaN, 1)).toThrow(RangeError);
});
