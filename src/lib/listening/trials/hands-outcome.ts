import { binomialTail } from '../../numeric/binomial-tail.js';
import { shareInterval } from './share-interval.js';
import { SHOWN_AT } from './trial-plan.js';

/** What came of a show of hands for several things, each by its place. */
export interface HandsOutcome {
  total: number;
  /** The most that one of them got, and which got it. */
  most: number;
  leading: number[];
  /** How often at most one or another gets so many by chance alone, over many such halls. */
  chance: number;
  /** Where the share of each lies: all of these hold together with a confidence of 95 %. */
  intervals: [low: number, high: number][];
  /** Whether one of them got more than chance gives, by `SHOWN_AT`. */
  shown: boolean;
}

/**
 * m things, n hands, the most for one of them k. Which one it would be nobody knew beforehand, so that any of them counts: by chance alone, each
 * hand for any of them alike, one gets k or more in at most m·P(X ≥ k), X ~ B(n, 1/m), of all halls (Bonferroni's inequality; exact
 * where k is more than half of n). For the same reason each share has its exact interval (`shareInterval`) at the confidence 1 − 0.05/m.
 * Hands are taken as independent of each other, which those of one hall are not.
 *
 * @param hands 2 or more whole numbers from 0, one of them above 0, 10000 together at most
 * @throws RangeError outside these
 */
export function handsOutcome(hands: readonly number[]): HandsOutcome {
  if (hands.length < 2) throw new RangeError(`hands must be for two things or more, got ${hands.length}`);
  const wrong = hands.find((count) => !(Number.isInteger(count) && count >= 0));
  if (wrong !== undefined) throw new RangeError(`hands must be whole numbers from 0, got ${wrong}`);
  const total = hands.reduce((sum, count) => sum + count, 0);
  if (total === 0) throw new RangeError('hands must be one or more, got 0');
  const most = Math.max(...hands);
  const things = hands.length;
  const chance = Math.min(1, things * binomialTail(most, total, 1 / things));
  return {
    total,
    most,
    leading: hands.flatMap((count, i) => (count === most ? [i] : [])),
    chance,
    intervals: hands.map((count) => shareInterval(count, total, 1 - 0.05 / things)),
    shown: chance <= SHOWN_AT
  };
}
