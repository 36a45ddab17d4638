const WORDS = { tone: 'a tone in the air', puff: 'one push of the cone', curves: 'the curves' };

/**
 * What the hall sees next, round and round: the curves, a steady tone in the air, one push of the cone.
 *
 * @param field whether the chosen model knows the air; without it there is nothing to push
 */
export function nextShown(air: boolean, mode: 'tone' | 'puff', field: boolean): keyof typeof WORDS {
  if (!air) return 'tone';
  return mode === 'tone' && field ? 'puff' : 'curves';
}

/** The same in words. */
export function nextWords(...now: Parameters<typeof nextShown>): string {
  return `to see ${WORDS[nextShown(...now)]}`;
}
