import { binomialTail } from '../../numeric/binomial-tail.js';
import { leastWhere } from '../../numeric/least-where.js';

/**
 * The exact interval of a share: all shares at which `right` of `trials` would be neither too many nor too few, each at half of what is
 * left of the confidence (C. J. Clopper and E. S. Pearson, Biometrika 26 (1934) 404). It covers the true share at least as often as it
 * says. Found by halving to 1e-12.
 *
 * @param right a whole number within 0 … trials
 * @param trials a whole number, 1 or more
 * @param confidence within 0 … 1, 0.95 if left out
 * @throws RangeError outside these
 */
export function shareInterval(right: number, trials: number, confidence = 0.95): [low: number, high: number] {
  if (!(Number.isInteger(trials) && trials >= 1))
    throw new RangeError(`trials must be a whole number of at least 1, got ${trials}`);
  if (!(Number.isInteger(right) && right >= 0 && right <= trials))
    throw new RangeError(`right answers must be a whole number within 0 … ${trials}, got ${right}`);
  if (!(confidence > 0 && confidence < 1))
    throw new RangeError(`confidence must be within 0 … 1, got ${confidence}`);
  const tail = (1 - confidence) / 2;
  return [
    right === 0 ? 0 : shareAt((share) => binomialTail(right, trials, share), tail),
    right === trials ? 1 : shareAt((share) => binomialTail(right + 1, trials, share), 1 - tail)
  ];
}

/** Where something that rises with the share passes a level. */
function shareAt(rising: (share: number) => number, level: number): number {
  return leastWhere([0, 1], 1e-12, (share) => rising(share) >= level);
}
