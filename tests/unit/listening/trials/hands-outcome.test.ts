import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { handsOutcome } from '../../../../src/lib/listening/trials/hands-outcome.js';
import { preferenceOutcome } from '../../../../src/lib/listening/trials/trial-outcome.js';
import { random } from '../../../../src/lib/sounds/blocks/random.js';
import { close } from '../../../helpers/close.js';
import reference from '../../../reference/trials.json' with { type: 'json' };

test('chance and intervals are those of SciPy', () => {
  for (const { hands, bound, intervals } of reference.hands) {
    const outcome = handsOutcome(hands);
    close(outcome.chance, bound, { rel: 1e-10, because: 'sums of as many terms' });
    outcome.intervals.forEach(([low, high], i) => {
      close(low, intervals[i][0], { abs: 1e-9, because: 'halving to 1e-12, and SciPy’s own root finder' });
      close(high, intervals[i][1], { abs: 1e-9, because: 'halving to 1e-12, and SciPy’s own root finder' });
    });
  }
});

test('what is said to happen at most so often by chance never happens more often, and all but as often where it is rare', () => {
  for (const { hands, exactly } of reference.hands) {
    if (exactly === null) continue;
    const { chance } = handsOutcome(hands);
    expect(chance).toBeGreaterThanOrEqual(Math.min(1, exactly) - 1e-12);
    if (chance < 0.05) close(chance, exactly, { rel: 1e-3, because: 'two get as many hardly ever' });
  }
});

test('of two things it is the preference of blind trials', () => {
  for (const [a, b] of [
    [12, 8],
    [15, 5],
    [3, 13]
  ])
    close(handsOutcome([a, b]).chance, preferenceOutcome(a, a + b).chance, {
      rel: 1e-12,
      because: 'the same tail twice'
    });
});

test('in a hall without preference, one in twenty at most shows one; a share lies in its interval', () => {
  const chance = random(11);
  const RUNS = 2000;
  let [shown, held] = [0, 0];
  for (let run = 0; run < RUNS; run++) {
    const hands = [0, 0, 0, 0];
    for (let i = 0; i < 24; i++) hands[Math.floor(chance.uniform() * 4)]++;
    const outcome = handsOutcome(hands);
    if (outcome.shown) shown++;
    if (outcome.intervals.every(([low, high]) => low <= 0.25 && 0.25 <= high)) held++;
  }
  expect(shown / RUNS).toBeLessThanOrEqual(0.05);
  expect(held / RUNS).toBeGreaterThanOrEqual(0.95);
});

test('all that lead are named', () => {
  expect(handsOutcome([4, 7, 7])).toMatchObject({ total: 18, most: 7, leading: [1, 2], shown: false });
  expect(handsOutcome([20, 1, 0])).toMatchObject({ total: 21, most: 20, leading: [0], shown: true });
});

test('what cannot be hands is refused', () => {
  expect(() => handsOutcome([3])).toThrow('hands must be for two things or more, got 1');
  expect(() => handsOutcome([3, -1])).toThrow('hands must be whole numbers from 0, got -1');
  expect(() => handsOutcome([0, 0])).toThrow('hands must be one or more, got 0');
});

test('the figures of docs/models/hall-vote.md', () => {
  const page = readFileSync('docs/models/hall-vote.md', 'utf8');
  const rows = [...page.matchAll(/^\| ([\d, ]+?) +\| +(\.\d+) \| +(\d+) to (\d+) % \|$/gm)];
  expect(rows).toHaveLength(3);
  for (const [, hands, chance, low, high] of rows) {
    const outcome = handsOutcome(hands.split(', ').map(Number));
    expect(outcome.chance.toFixed(chance.length - 1)).toBe(`0${chance}`);
    expect(outcome.intervals[outcome.leading[0]].map((share) => Math.round(100 * share))).toEqual([
      +low,
      +high
    ]);
  }
});
