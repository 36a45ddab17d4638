import { describe, expect, it, test } from 'vitest';
import { checkLift, isWithin, liftResponse } from '../../../../src/lib/acoustics/speaker/lift.js';
import { levelDb } from '../../../../src/lib/numeric/level-db.js';
import { close } from '../../../helpers/close.js';

const LIFT = { gainDb: 9, below: 250 };
const at = (...frequency: number[]) => levelDb(liftResponse(LIFT, Float64Array.from(frequency)));

describe('a lift is a low shelf (Audio EQ Cookbook, W3C Working Group Note 2021, slope 1)', () => {
  it('gives its gain at 0 Hz, half of it at its frequency and nothing far above', () => {
    const [low, middle, high] = at(0, 250, 25_000);
    close(low, 9, { abs: 1e-9, because: 'rounding' });
    close(middle, 4.5, { abs: 1e-9, because: 'rounding' });
    close(high, 0, { abs: 0.001, because: 'two decades above' });
  });

  it('falls without a ripple, and mirrored about its frequency', () => {
    const levels = at(...Array.from({ length: 120 }, (_, i) => 20 * 2 ** (i / 12)));
    levels.forEach((level, i) => i > 0 && expect(level).toBeLessThan(levels[i - 1]));
    const [below, above] = at(100, 625);
    close(below + above, 9, { abs: 1e-9, because: 'the same distance in octaves' });
  });

  it('is what the cookbook’s coefficients give', () => {
    // lowShelf in s, Q = 1/√2, by complex arithmetic of its own at s = 2j: A = 10^(9/40)
    const a = 10 ** (9 / 40);
    const turn = 2 * Math.sqrt(2 * a);
    const [top, bottom] = [
      [a - 4, turn],
      [1 - 4 * a, turn]
    ];
    const size = bottom[0] ** 2 + bottom[1] ** 2;
    const h = liftResponse(LIFT, Float64Array.of(500));
    close(h.re[0], (a * (top[0] * bottom[0] + top[1] * bottom[1])) / size, {
      rel: 1e-12,
      because: 'rounding'
    });
    close(h.im[0], (a * (top[1] * bottom[0] - top[0] * bottom[1])) / size, {
      rel: 1e-12,
      because: 'rounding'
    });
  });
});

test('what is beyond its limits is refused in one sentence', () => {
  expect(() => checkLift({ gainDb: 19, below: 300 })).toThrow('the lift must be within 0 … 18 dB, got 19');
  expect(() => checkLift({ gainDb: 6, below: 2000 })).toThrow(
    'the frequency below which is lifted must be within 50 … 1000 Hz, got 2000'
  );
});

test('there is room for less of a lift where there is room for more', () => {
  expect(isWithin(null, null)).toBe(true);
  expect(isWithin(LIFT, null)).toBe(false);
  expect(isWithin(LIFT, LIFT)).toBe(true);
  expect(isWithin({ ...LIFT, gainDb: 3 }, LIFT)).toBe(true);
  expect(isWithin({ ...LIFT, below: 400 }, LIFT)).toBe(false);
  // it is so at every frequency
  const less = levelDb(liftResponse({ gainDb: 3, below: 200 }, Float64Array.of(20, 100, 300, 1000)));
  at(20, 100, 300, 1000).forEach((level, i) => expect(less[i]).toBeLessThan(level));
});
