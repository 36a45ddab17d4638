import { describe, expect, it } from 'vitest';
import { timeScale } from '../../../../src/lib/plot/scales/time-scale.js';
import { timesBy, timeStep, timeText, timeTicks } from '../../../../src/lib/plot/axes/time-ticks.js';

describe('timeStep', () => {
  it.each([
    [10, 10, 1],
    [10, 9, 2],
    [30, 10, 5],
    [2, 20, 0.1],
    [0.3, 10, 0.05],
    [61, 10, 10],
    [600, 6, 100],
    [1, 1, 1]
  ])('of %d s in at most %d parts is %d s', (duration, most, step) => {
    expect(timeStep(duration, most)).toBe(step);
    expect(duration / timeStep(duration, most)).toBeLessThanOrEqual(most);
  });
});

describe('timesBy', () => {
  it('holds the duration itself where the step divides it, without rounding errors', () => {
    expect(timesBy(0.1, 0.7)).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7]);
    expect(timesBy(0.5, 1.2)).toEqual([0, 0.5, 1]);
  });
});

describe('timeTicks', () => {
  it('says the unit once and keeps figures apart', () => {
    expect(timeTicks(3, 800, 13).map(({ label }) => label)).toEqual([
      '0 s',
      '0.5',
      '1',
      '1.5',
      '2',
      '2.5',
      '3'
    ]);
    for (const duration of [0.02, 0.4, 1.7, 12, 30, 299])
      for (const width of [250, 800, 1400]) {
        const ticks = timeTicks(duration, width, 13);
        expect(((ticks[1].time - ticks[0].time) / duration) * width).toBeGreaterThanOrEqual(6 * 13 - 1e-6);
      }
  });
  it('counts in milliseconds below half a second', () => {
    expect(timeTicks(0.25, 500, 13).map(({ label }) => label)).toEqual([
      '0 ms',
      '50',
      '100',
      '150',
      '200',
      '250'
    ]);
  });
});

describe('timeText', () => {
  it.each([
    [0.03412, 0.2, '0.034 s'],
    [1.234, 8, '1.23 s'],
    [12.34, 30, '12.3 s']
  ])('writes %d of %d s as %s', (time, duration, text) => {
    expect(timeText(time, duration)).toBe(text);
  });
});

describe('timeScale', () => {
  it('puts the ends at the edges and the middle between', () => {
    const x = timeScale(4, { left: 50, right: 250 });
    expect([x(0), x(2), x(4), x.invert(100)]).toEqual([50, 150, 250, 1]);
  });
  it('refuses a duration that is none', () => {
    for (const duration of [0, -1, NaN, Infinity])
      expect(() => timeScale(duration, { left: 0, right: 1 })).toThrow(
        `duration must be above 0 s, got ${duration}`
      );
  });
});
