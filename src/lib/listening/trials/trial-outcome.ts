import { binomialTail } from '../../numeric/binomial-tail.js';
import { shareInterval } from './share-interval.js';
import { SHOWN_AT } from './trial-plan.js';

/** What came of a number of trials with two answers each. */
export interface TrialOutcome {
  /** How often chance alone would do as well or better, over many such runs. */
  chance: number;
  /** Where the true share lies, with a confidence of 95 % (`shareInterval`). */
  interval: [low: number, high: number];
  /** Whether that is more than chance, by `SHOWN_AT`. */
  shown: boolean;
}

/**
 * `right` of `trials` where one of two answers was right: P(X ≥ right), X ~ B(trials, ½).
 * @throws RangeError as `shareInterval` does
 */
export function hearingOutcome(right: number, trials: number): TrialOutcome {
  return outcome(binomialTail(right, trials, 0.5), right, trials);
}

/**
 * One of two was chosen `times` of `trials`. Nobody knew beforehand which of them it would be, so that as lopsided a result the other
 * way counts, too: 2·P(X ≥ the larger number), at most 1.
 * @throws RangeError as `shareInterval` does
 */
export function preferenceOutcome(times: number, trials: number): TrialOutcome {
  const larger = Math.max(times, trials - times);
  return outcome(Math.min(1, 2 * binomialTail(larger, trials, 0.5)), times, trials);
}

function outcome(chance: number, count: number, trials: number): TrialOutcome {
  return { chance, interval: shareInterval(count, trials), shown: chance <= SHOWN_AT };
}
