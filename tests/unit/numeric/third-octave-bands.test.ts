import { describe, expect, it } from 'vitest';
import { thirdOctaveBands } from '../../../src/lib/numeric/third-octave-bands.js';
import { close } from '../../helpers/close.js';

describe('thirdOctaveBands', () => {
  it('runs from 50 Hz to 16 kHz unless told otherwise', () => {
    const bands = thirdOctaveBands();
    expect(bands.length).toBe(26);
    expect(bands.map((b) => b.label).join(' ')).toBe(
      '50 63 80 100 125 160 200 250 315 400 500 630 800 1 k 1.25 k 1.6 k 2 k 2.5 k 3.15 k 4 k 5 k 6.3 k 8 k 10 k 12.5 k 16 k'
    );
  });

  it('takes any range, by nominal frequencies', () => {
    expect(thirdOctaveBands(12.5, 31.5).map((b) => b.nominal)).toEqual([12.5, 16, 20, 25, 31.5]);
    expect(thirdOctaveBands(800, 4000).map((b) => b.nominal)).toEqual([
      800, 1000, 1250, 1600, 2000, 2500, 3150, 4000
    ]);
    expect(thirdOctaveBands(1000, 1000).length).toBe(1);
  });

  it('leaves no gap and no overlap between the bands', () => {
    const bands = thirdOctaveBands();
    for (let i = 1; i < bands.length; i++)
      close(bands[i].lower, bands[i - 1].upper, { rel: 1e-12, because: 'rounding' });
  });

  it('refuses a range that is none', () => {
    expect(() => thirdOctaveBands(0, 100)).toThrow(
      'third-octave bands must run from above 0 Hz upwards, got 0 … 100'
    );
    expect(() => thirdOctaveBands(200, 100)).toThrow(RangeError);
    expect(() => thirdOctaveBands(NaN, 100)).toThrow(RangeError);
  });
});
