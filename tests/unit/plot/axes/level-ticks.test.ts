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
  it('widens the step where figures would touch, and still passes through zero', () => {
    const ticks = levelTicks(12, -42, 1.2, 13);
    expect(ticks.map((tick) => tick.levelDb)).toEqual([0, -20, -40]);
  });
});
