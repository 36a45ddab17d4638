import { describe, expect, it } from 'vitest';
import { firstOrderHighPass, firstOrderSection } from '../../../../src/lib/acoustics/rule/first-order.js';
import { close } from '../../../helpers/close.js';

describe('firstOrderHighPass', () => {
  it('is (1 + j)/2 at its corner: −3 dB and an eighth of a turn ahead', () => {
    const h = firstOrderHighPass(Float64Array.of(1351), 1351);
    close(h.re[0], 0.5, { abs: 1e-15, because: 'j/(1 + j)' });
    close(h.im[0], 0.5, { abs: 1e-15, because: 'j/(1 + j)' });
  });

  it('is nothing at 0 and one far above', () => {
    const h = firstOrderHighPass(Float64Array.of(0, 1e12), 1000);
    expect([h.re[0], h.im[0]]).toEqual([0, 0]);
    close(h.re[1], 1, { abs: 1e-12, because: 'limit' });
  });

  it('is mirrored about 0: H(−f) is the conjugate', () => {
    const h = firstOrderHighPass(Float64Array.of(-300, 300), 1000);
    expect([h.re[0], h.im[0]]).toEqual([h.re[1], -h.im[1]]);
  });

  it('refuses a corner that is none', () => {
    expect(() => firstOrderHighPass(new Float64Array(1), 0)).toThrow(
      'the corner frequency must be above 0 Hz, got 0'
    );
    expect(() => firstOrderHighPass(new Float64Array(1), NaN)).toThrow(RangeError);
    expect(() => firstOrderSection(new Float64Array(1), -1, 5)).toThrow(
      'the zero must be at least 0 Hz, got -1'
    );
  });
});

describe('firstOrderSection', () => {
  it('runs from zero/pole to one', () => {
    const h = firstOrderSection(Float64Array.of(0, 1e12), 300, 1200);
    close(h.re[0], 0.25, { abs: 1e-15, because: '300/1200' });
    close(h.re[1], 1, { abs: 1e-12, because: 'limit' });
  });
});
