import type { BlindRun } from '../../file/blind-run.js';
import { random } from '../../sounds/blocks/random.js';
import { shuffled } from './shuffled.js';

/** What stands behind the letters of each trial of a run, in the letters' order, as places in its mounts. */
export function drawTrials({ question, mounts, planned, seed }: Drawn): number[][] {
  const { uniform } = random(seed);
  const coin = (): 0 | 1 => (uniform() < 0.5 ? 0 : 1);
  // Each by a coin of its own: where the numbers were made even, who counts could guess better than by halves.
  if (question === 'same') return Array.from({ length: planned }, () => [coin(), coin()]);
  if (question === 'like')
    return Array.from({ length: planned }, () => {
      const second = coin();
      return [coin(), second, 1 - second];
    });
  const rounds = Math.ceil(planned / pairsOf(mounts.length).length);
  return Array.from({ length: rounds }, () => shuffled(pairsOf(mounts.length), uniform))
    .flat()
    .slice(0, planned)
    .map((pair) => (coin() ? pair : pair.toReversed()));
}

export type Drawn = Pick<BlindRun, 'question' | 'mounts' | 'planned' | 'seed'>;

/** Every pair of so many, once. */
export function pairsOf(count: number): number[][] {
  return Array.from({ length: count }, (_, i) => i).flatMap((i) =>
    Array.from({ length: i }, (_, j) => [j, i])
  );
}
