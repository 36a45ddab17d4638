import { binomialTail } from '../../numeric/binomial-tail.js';

/** A run shows something where guessing does as well in at most one of twenty runs (the convention of the field). */
export const SHOWN_AT = 0.05;

/** Fewer than five right out of five are passed by guessing too often, and nobody listens to more than so many. */
export const TRIALS = { fewest: 5, most: 60 } as const;

/** What a number of trials, each with two answers of which one is right, can show. */
export interface TrialPlan {
  trials: number;
  /** So many right are needed. */
  needed: number;
  /** How often guessing passes. */
  guessing: number;
  /** How often a listener passes who is right in this share of all trials. */
  power: (share: number) => number;
}

/**
 * The least number k with P(X ≥ k) ≤ 0.05 for X ~ B(n, ½), and what that asks of a listener: 12 of 16 for example, which guessing reaches
 * with .038, a listener who is right in 80 % with .80, and one who is right in 60 % with .17 only (L. Leventhal, J. Audio Eng. Soc. 34
 * (1986) 437).
 *
 * @param trials a whole number within 5 … 60
 * @throws RangeError outside that
 */
export function trialPlan(trials: number): TrialPlan {
  if (!(Number.isInteger(trials) && trials >= TRIALS.fewest && trials <= TRIALS.most))
    throw new RangeError(
      `the number of trials must be a whole number within ${TRIALS.fewest} … ${TRIALS.most}, got ${trials}`
    );
  let needed = trials;
  while (binomialTail(needed - 1, trials, 0.5) <= SHOWN_AT) needed--;
  return {
    trials,
    needed,
    guessing: binomialTail(needed, trials, 0.5),
    power: (share) => binomialTail(needed, trials, share)
  };
}
