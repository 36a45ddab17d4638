import { describe, expect, it } from 'vitest';
import { stepAlong, thirdOctaves } from '../../../../src/lib/plot/scales/third-octaves.js';
import { close } from '../../../helpers/close.js';

describe('thirdOctaves', () => {
  it('names the nominal mid-bands of IEC 61260-1, ends included', () => {
    expect(thirdOctaves(50, 500)).toEqual([50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500]);
    expect(thirdOctaves(5000, 16000)).toEqual([5000, 6300, 8000, 10000, 12500, 16000]);
  });
  it('lies within 1.2 % of the exact mid-bands 1000·10^(n/10) Hz of the standard', () => {
    const all = thirdOctaves(20, 20000);
    expect(all).toHaveLength(31);
    all.forEach((nominal, i) =>
      close(nominal, 1000 * 10 ** ((i - 17) / 10), {
        rel: 0.012,
        because: 'nominal values are rounded to the R10 series'
      })
    );
  });
});

describe('stepAlong', () => {
  const stops = thirdOctaves(50, 16000);
  it('goes from stop to stop, and an octave in three', () => {
    expect(stepAlong(stops, 1000, 1)).toBe(1250);
    expect(stepAlong(stops, 1000, -1)).toBe(800);
    expect(stepAlong(stops, 1000, 3)).toBe(2000);
  });
  it('goes from between two stops to the neighbour on that side', () => {
    expect(stepAlong(stops, 1100, 1)).toBe(1250);
    expect(stepAlong(stops, 1100, -1)).toBe(1000);
  });
  it('holds at the ends, and reaches them from anywhere', () => {
    expect(stepAlong(stops, 16000, 1)).toBe(16000);
    expect(stepAlong(stops, 50, -3)).toBe(50);
    expect(stepAlong(stops, 777, Infinity)).toBe(16000);
    expect(stepAlong(stops, 777, -Infinity)).toBe(50);
  });
  it('comes back: a step up and a step down cancel away from the ends', () => {
    for (const stop of stops.slice(0, -1)) expect(stepAlong(stops, stepAlong(stops, stop, 1), -1)).toBe(stop);
  });
});
