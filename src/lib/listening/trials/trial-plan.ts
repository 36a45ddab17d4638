import { binomialTail } from '../../numeric/binomial-tail.js';

/** A run shows something where guessing does as well in at most one of twenty runs (the convention of the field). */
export const SHOWN_AT = 0.05;

/** Of fewer even all for one of two would show no preference, and nobody listens to more than so many. */
export const TRIALS = { fewest: 6, most: 60 } as const;

/** What a number of trials, each with two answers of which one is right, can show. */
export interface TrialPlan {
  trials: number;
  /** So many right are needed; of a preference, so many for one of the two. */
  needed: number;
  /** How often guessing passes, or who has no preference. */
  guessing: number;
  /** How often a listener passes who is right in this share of all trials, or chooses one of the two in it. */
  power: (share: number) => number;
}

/**
 * The least number k with P(X ≥ k) ≤ 0.05 for X ~ B(n, ½), and what that asks of a listener: 12 of 16 for example, which guessing reaches
 * with .038, a listener who is right in 80 % with .80, and one who is right in 60 % with .17 only (L. Leventhal, J. Audio Eng. Soc. 34
 * (1986) 437).
 *
 * @param trials a whole number within 6 … 60
 * @param sides 1 where one answer is right; 2 for a preference, where as lopsided a result the other way counts, too
 * @throws RangeError outside that
 */
export function trialPlan(trials: number, sides: 1 | 2 = 1): TrialPlan {
  if (!(Number.isInteger(trials) && trials >= TRIALS.fewest && trials <= TRIALS.most))
    throw new RangeError(
      `the number of trials must be a whole number within ${TRIALS.fewest} … ${TRIALS.most}, got ${trials}`
    );
  const passes = (least: number, share: number): number =>
    binomialTail(least, trials, share) + (sides === 2 ? binomialTail(least, trials, 1 - share) : 0);
  let needed = trials;
  while (passes(needed - 1, 0.5) <= SHOWN_AT) needed--;
  return { trials, needed, guessing: passes(needed, 0.5), power: (share) => passes(needed, share) };
}
