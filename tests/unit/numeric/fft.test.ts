import { describe, expect, it } from 'vitest';
import { complexArray } from '../../../src/lib/numeric/complex-array.js';
import { RealFft } from '../../../src/lib/numeric/fft.js';
import { close } from '../../helpers/close.js';
import { noise } from '../../helpers/noise.js';

describe('RealFft', () => {
  for (const size of [4, 8, 16, 32, 64, 512, 1024])
    it(`agrees with the plain sum over ${size} samples, and comes back`, () => {
      const x = noise(size, size);
      const fft = new RealFft(size);
      const got = fft.forward(x);
      expect(got.re.length).toBe(size / 2 + 1);
      for (let k = 0; k <= size / 2; k++) {
        let re = 0;
        let im = 0;
        for (let n = 0; n < size; n++) {
          re += x[n] * Math.cos((2 * Math.PI * k * n) / size);
          im -= x[n] * Math.sin((2 * Math.PI * k * n) / size);
        }
        const because = `bin ${k}: rounding of ${size} additions`;
        close(got.re[k], re, { abs: 1e-13 * size, because });
        close(got.im[k], im, { abs: 1e-13 * size, because });
      }
      const back = fft.inverse(got);
      for (let n = 0; n < size; n++) close(back[n], x[n], { abs: 1e-13, because: 'rounding' });
    });

  it('writes into the arrays it is given', () => {
    const fft = new RealFft(8);
    const bins = complexArray(5);
    const samples = new Float64Array(8);
    expect(fft.forward(Float64Array.of(1, 0, 0, 0, 0, 0, 0, 0), bins)).toBe(bins);
    expect([...bins.re]).toEqual([1, 1, 1, 1, 1]);
    expect(fft.inverse(bins, samples)).toBe(samples);
    expect(samples[0]).toBe(1);
  });

  it('takes the imaginary parts of the first and the last bin as 0', () => {
    const fft = new RealFft(16);
    const bins = fft.forward(noise(16, 3));
    const expected = fft.inverse(bins);
    bins.im[0] = 7;
    bins.im[8] = -5;
    expect(fft.inverse(bins)).toEqual(expected);
  });

  it('refuses a size that is no power of two, and lengths that do not fit', () => {
    expect(() => new RealFft(12)).toThrow('FFT size must be a power of two of at least 4, got 12');
    expect(() => new RealFft(2)).toThrow(RangeError);
    expect(() => new RealFft(8).forward(new Float64Array(7))).toThrow(RangeError);
    expect(() => new RealFft(8).inverse(complexArray(4))).toThrow(RangeError);
  });
});
