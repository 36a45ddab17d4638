import { describe, expect, it } from 'vitest';
import { frequencyScale } from '../../../../src/lib/plot/scales/frequency-scale.js';
import { close } from '../../../helpers/close.js';

const scale = frequencyScale({ from: 50, to: 16000 }, { left: 40, right: 1240 });

describe('frequencyScale', () => {
  it('puts the ends of the range on the edges of the area', () => {
    close(scale(50), 40, { abs: 1e-9, because: 'rounding of pixels' });
    close(scale(16000), 1240, { abs: 1e-9, because: 'rounding of pixels' });
  });
  it('gives equal ratios equal widths', () => {
    const octave = 1200 / Math.log2(320);
    for (const f of [50, 63, 440, 8000])
      close(scale(2 * f) - scale(f), octave, { abs: 1e-9, because: 'log2 of the range, rounding' });
  });
  it('inverts', () => {
    close(scale.invert(scale(1234)), 1234, { rel: 1e-12, because: 'rounding of exp and log' });
  });
  it.each([
    [0, 100],
    [-5, 100],
    [100, 100],
    [200, 100],
    [NaN, 100],
    [50, Infinity]
  ])('refuses the range %d … %d Hz', (from, to) => {
    expect(() => frequencyScale({ from, to }, { left: 0, right: 1 })).toThrow(RangeError);
  });
});
