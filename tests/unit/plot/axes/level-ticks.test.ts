import { describe, expect, it } from 'vitest';
import { levelTicks } from '../../../../src/lib/plot/axes/level-ticks.js';

describe('levelTicks', () => {
  it('draws a line every 10 dB through zero, with true minus signs', () => {
    expect(levelTicks(12, -42, 5, 13).map((tick) => tick.label)).toEqual([
      '+10 dB',
      '0',
      '−10',
      '−20',
      '−30',
      '−40'
    ]);
  });
  it('in dB re 20 µPa stands at whole tens of that, where the curves have them', () => {
    const ticks = levelTicks(12, -42, 5, 13, 64.3);
    expect(ticks.map((tick) => tick.label)).toEqual(['70 dB', '60', '50', '40', '30']);
    expect(ticks[0].levelDb).toBeCloseTo(5.7, 12);
    expect(levelTicks(12, -42, 5, 13, 33).at(-1)!.label).toBe('0');
    expect(levelTicks(12, -42, 5, 13, 31).at(-1)!.label).toBe('−10');
  });
  it('widens the step where figures would touch, and still passes through zero', () => {
    const ticks = levelTicks(12, -42, 1.2, 13);
    expect(ticks.map((tick) => tick.levelDb)).toEqual([0, -20, -40]);
  });
});
