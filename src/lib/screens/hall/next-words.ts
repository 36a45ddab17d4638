/**
 * What the hall sees next, round and round: the curves, a steady tone in the air, one push of the cone.
 *
 * @param field whether the chosen model knows the air; without it there is nothing to push
 */
export function nextWords(air: boolean, mode: 'tone' | 'puff', field: boolean): string {
  if (!air) return 'next: a tone in the air';
  return mode === 'tone' && field ? 'next: one push of the cone' : 'next: the curves';
}
