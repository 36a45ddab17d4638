/** What the hall sees next, round and round: the curves, a steady tone in the air, one push of the cone. */
export function nextWords(air: boolean, mode: 'tone' | 'puff'): string {
  if (!air) return 'next: a tone in the air';
  return mode === 'tone' ? 'next: one push of the cone' : 'next: the curves';
}
