import { expect, test } from 'vitest';
import { usualValues } from '../../../../src/lib/sounds/knob.js';
import { type Diesel, DIESEL_KNOBS } from '../../../../src/lib/sounds/diesel/diesel.js';
import { EXHAUST_OPENS, firingsAlong } from '../../../../src/lib/sounds/diesel/firings.js';
import { slowNoise } from '../../../../src/lib/sounds/diesel/slow-noise.js';
import { steady } from './steady.js';

const RATE = 8000;
const USUAL: Diesel = { kind: 'diesel', name: 'any', ...usualValues(DIESEL_KNOBS) };

function firings(change: Partial<Diesel>, effort: number, speed = 8) {
  const { course, span } = steady({ speed, effort, turns: 40 }, RATE);
  return firingsAlong({ ...USUAL, ...change }, course, span, slowNoise(span));
}

const mean = (values: number[]) => values.reduce((a, b) => a + b, 0) / values.length;
const spread = (values: number[]) => Math.sqrt(mean(values.map((x) => (x - mean(values)) ** 2)));

test('every cylinder fires once in a pattern, in order', () => {
  for (const [cycle, each] of [
    ['four-stroke', 20],
    ['two-stroke', 40]
  ] as const)
    for (const cylinders of [1, 5, 12, 20]) {
      const all = firings({ cycle, cylinders }, 0.5);
      expect(all.map(({ number }) => number)).toEqual(all.map((_, i) => i % cylinders));
      expect(all).toHaveLength(each * cylinders);
    }
});

test('exhausts open midway between the marks of the pattern, on the average', () => {
  const all = firings({ layout: 'in-line', cylinders: 6, unevenness: 0 }, 1);
  const interval = RATE / 8 / 3;
  const late = all.map(({ at, degree }, i) => at + EXHAUST_OPENS * degree * RATE - (i + 0.5) * interval);
  expect(Math.abs(mean(late))).toBeLessThan(0.02 * interval);
  expect(spread(late)).toBeLessThan(0.03 * interval);
});

test('the second bank of a vee fires a little late, that of an engine in line does not exist', () => {
  const gap = (layout: Diesel['layout']) => {
    const all = firings({ layout, unevenness: 0 }, 1);
    const gaps = all.slice(1).map(({ at }, i) => at - all[i].at);
    const odd = gaps.filter((_, i) => i % 2 === 0);
    const even = gaps.filter((_, i) => i % 2 === 1);
    return (mean(odd) - mean(even)) / mean(gaps);
  };
  expect(gap('vee')).toBeGreaterThan(0.1);
  expect(gap('vee')).toBeLessThan(0.2);
  expect(Math.abs(gap('in-line'))).toBeLessThan(0.02);
});

test('unevenness spreads the strengths, at idle more than at full effort; the mean stays near 1', () => {
  const strengths = (unevenness: number, effort: number) =>
    firings({ unevenness }, effort).map(({ strength }) => strength);
  const even = spread(strengths(0, 0.1));
  const idle = spread(strengths(0.5, 0.1));
  expect(even).toBeLessThan(0.1);
  expect(idle).toBeGreaterThan(2 * even);
  expect(spread(strengths(1, 0.1))).toBeGreaterThan(idle);
  expect(spread(strengths(0.5, 1))).toBeLessThan(0.7 * idle);
  expect(Math.abs(mean(strengths(0.5, 0.1)) - 1)).toBeLessThan(0.2);
});

test('no two firings of a cylinder are alike, but the same firing is made the same again', () => {
  const once = firings({ cylinders: 4 }, 0.3);
  const again = firings({ cylinders: 4 }, 0.3);
  expect(again.map(({ strength }) => strength)).toEqual(once.map(({ strength }) => strength));
  expect(again[7].chance.uniform()).toBe(once[7].chance.uniform());
  expect(once[4].strength).not.toBe(once[0].strength);
});
