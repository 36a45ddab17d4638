import { describe, expect, it } from 'vitest';
import { levelScale } from '../../../../src/lib/plot/scales/level-scale.js';
import { close } from '../../../helpers/close.js';

describe('levelScale', () => {
  it('runs downward from the top of the area to its floor, equal steps for equal decibels', () => {
    const scale = levelScale({ top: 12, bottom: -42 }, { top: 10, bottom: 280 });
    close(scale(12), 10, { because: 'an end of the scale' });
    close(scale(-42), 280, { because: 'an end of the scale' });
    close(scale(0), 70, { abs: 1e-9, because: '5 pixels a decibel' });
    close(scale(-10) - scale(0), 50, { abs: 1e-9, because: '5 pixels a decibel' });
  });
  it.each([
    [0, 0],
    [-10, 10],
    [NaN, 0],
    [Infinity, 0]
  ])('refuses the range from %d down to %d dB', (top, bottom) => {
    expect(() => levelScale({ top, bottom }, { top: 0, bottom: 1 })).toThrow(RangeError);
  });
});
