import { expect, test } from 'vitest';
import { preferenceRanking } from '../../../../src/lib/listening/trials/preference-ranking.js';
import { shareInterval } from '../../../../src/lib/listening/trials/share-interval.js';
import { hearingOutcome, preferenceOutcome } from '../../../../src/lib/listening/trials/trial-outcome.js';
import { trialPlan, TRIALS } from '../../../../src/lib/listening/trials/trial-plan.js';
import { random } from '../../../../src/lib/sounds/blocks/random.js';
import { close } from '../../../helpers/close.js';
import reference from '../../../reference/trials.json' with { type: 'json' };

const RUNS = 10_000;

/** How many of 10 000 runs somebody passes who is right with this probability. */
function passed(trials: number, share: number, seed: number): number {
  const { needed } = trialPlan(trials);
  const chance = random(seed);
  let passes = 0;
  for (let run = 0; run < RUNS; run++) {
    let right = 0;
    for (let i = 0; i < trials; i++) if (chance.uniform() < share) right++;
    if (right >= needed) passes++;
  }
  return passes / RUNS;
}

/** Four standard deviations of a share over 10 000 runs. */
const spread = (share: number): number => 4 * Math.sqrt((share * (1 - share)) / RUNS);

test('the numbers that must be right are those of the field', () => {
  // acoustics of blind trials: 8/7, 16/12, 24/17 (L. Leventhal, J. Audio Eng. Soc. 34 (1986) 437)
  const known = [
    [8, 7, 0.035],
    [16, 12, 0.038],
    [24, 17, 0.032]
  ];
  for (const [trials, needed, guessing] of known) {
    const plan = trialPlan(trials);
    expect(plan.needed).toBe(needed);
    close(plan.guessing, guessing, { abs: 0.0005, because: 'printed with three decimals' });
  }
  close(trialPlan(16).power(0.8), 0.8, { abs: 0.005, because: 'printed with two decimals' });
  close(trialPlan(8).power(0.8), 0.5, { abs: 0.005, because: 'printed with two decimals' });
  close(trialPlan(8).power(0.6), 0.11, { abs: 0.005, because: 'printed with two decimals' });
  close(trialPlan(24).power(0.6), 0.19, { abs: 0.005, because: 'printed with two decimals' });
  close(trialPlan(24).power(0.8), 0.91, { abs: 0.005, because: 'printed with two decimals' });
  close(1 - trialPlan(16).power(0.6), 0.83, { abs: 0.005, because: 'printed with two decimals' });
});

test('of 10 000 guessers as many pass as stated, and no more than one in twenty', () => {
  for (const trials of [8, 16, 24]) {
    const { guessing } = trialPlan(trials);
    close(passed(trials, 0.5, trials), guessing, {
      abs: spread(guessing),
      because: 'four standard deviations of 10 000 runs'
    });
  }
  for (let trials: number = TRIALS.fewest; trials <= TRIALS.most; trials++)
    for (const sides of [1, 2] as const) {
      const { needed, guessing } = trialPlan(trials, sides);
      expect(guessing).toBeLessThanOrEqual(0.05);
      expect(needed).toBeLessThanOrEqual(trials);
    }
});

test('listeners who are right four times of five pass with the stated power', () => {
  for (const trials of [8, 16, 24]) {
    const power = trialPlan(trials).power(0.8);
    close(passed(trials, 0.8, 100 + trials), power, {
      abs: spread(power),
      because: 'four standard deviations of 10 000 runs'
    });
  }
});

test('the interval is that of SciPy, and holds the true share in 19 of 20 runs at least', () => {
  for (const { k, n, low, high } of reference.intervals) {
    const [from, to] = shareInterval(k, n);
    close(from, low, { abs: 1e-9, because: 'halving to 1e-12, and SciPy’s own root finder' });
    close(to, high, { abs: 1e-9, because: 'halving to 1e-12, and SciPy’s own root finder' });
  }
  const chance = random(7);
  let held = 0;
  for (let run = 0; run < 2000; run++) {
    let right = 0;
    for (let i = 0; i < 16; i++) if (chance.uniform() < 0.7) right++;
    const [low, high] = shareInterval(right, 16);
    if (low <= 0.7 && 0.7 <= high) held++;
  }
  expect(held / 2000).toBeGreaterThanOrEqual(0.95);
});

test('a preference counts both ways: nobody knew which it would be', () => {
  close(hearingOutcome(12, 16).chance, 0.0384, { abs: 5e-5, because: 'printed with four decimals' });
  close(preferenceOutcome(12, 16).chance, 0.0768, { abs: 5e-5, because: 'twice one tail' });
  expect(preferenceOutcome(4, 16).chance).toBe(preferenceOutcome(12, 16).chance);
  expect(preferenceOutcome(8, 16).chance).toBe(1);
  expect([hearingOutcome(12, 16).shown, preferenceOutcome(12, 16).shown]).toEqual([true, false]);
  expect(hearingOutcome(0, 16)).toMatchObject({ chance: 1, shown: false });
});

test('worths are those of SciPy where all have won and lost', () => {
  for (const { wins, worth } of reference.worths)
    preferenceRanking(wins).worth!.forEach((each, i) =>
      close(each, worth[i], { abs: 1e-6, because: 'SciPy’s minimum of a flat likelihood' })
    );
});

test('where one has won all there are raw wins and no worth', () => {
  const ranking = preferenceRanking([
    [0, 3, 3],
    [0, 0, 2],
    [0, 1, 0]
  ]);
  expect(ranking).toEqual({ won: [6, 2, 1], compared: [6, 6, 6], worth: null });
  expect(
    preferenceRanking([
      [0, 0],
      [0, 0]
    ]).worth
  ).toBeNull();
});

test('what cannot be planned or counted is refused', () => {
  expect(() => trialPlan(5)).toThrow('the number of trials must be a whole number within 6 … 60, got 5');
  expect(() => shareInterval(1, 0)).toThrow('trials must be a whole number of at least 1, got 0');
  expect(() => shareInterval(5, 4)).toThrow('right answers must be a whole number within 0 … 4, got 5');
  expect(() => shareInterval(1, 4, 1)).toThrow('confidence must be within 0 … 1, got 1');
  expect(() =>
    preferenceRanking([
      [0, -1],
      [0, 0]
    ])
  ).toThrow('wins must be 2 rows of as many whole numbers from 0');
});
