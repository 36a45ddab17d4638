import { TRIALS } from '../../listening/trials/trial-plan.js';
import { pairsOf } from './draw-trials.js';

/** The numbers of trials that one can choose: of several mounts whole rounds, in which each meets each. */
export function possibleCounts(mounts: number): number[] {
  const pairs = pairsOf(mounts).length;
  if (mounts <= 2) return [8, 12, 16, 20, 24, 32, 40];
  const rounds = Math.floor(TRIALS.most / pairs);
  return Array.from({ length: rounds }, (_, i) => pairs * (i + 1)).filter((count) => count >= TRIALS.fewest);
}
