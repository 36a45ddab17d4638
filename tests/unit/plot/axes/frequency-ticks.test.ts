import { describe, expect, it } from 'vitest';
import { frequencyTicks } from '../../../../src/lib/plot/axes/frequency-ticks.js';

describe('frequencyTicks', () => {
  it('steps by 1, 2 and 5 and says the unit once', () => {
    expect(frequencyTicks(50, 16000, 480, 13).map((tick) => tick.label)).toEqual([
      '50 Hz',
      '100',
      '200',
      '500',
      '1k',
      '2k',
      '5k',
      '10k'
    ]);
  });
  it('keeps every line but only the figures of the decades where there is little room', () => {
    const ticks = frequencyTicks(50, 16000, 60, 12);
    expect(ticks).toHaveLength(8);
    expect(ticks.flatMap((tick) => tick.label || [])).toEqual(['100 Hz', '1k', '10k']);
  });
  it('includes ticks on the very ends of the range', () => {
    expect(frequencyTicks(20, 20000, 400, 12).map((tick) => tick.frequency)).toEqual([
      20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000
    ]);
  });
});
