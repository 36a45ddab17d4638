import type { Motion } from './motion.js';

/** The pattern that begins between two motions a tick apart, counted from turns = 0; null where none does. */
export function patternBegun(before: Motion, now: Motion, patternTurns: number): number | null {
  const begun = Math.floor(now.turns / patternTurns);
  return begun > Math.floor(before.turns / patternTurns) ? begun : null;
}

/** The same motions, turned by less than a tick's worth in all, so that the last one is at these turns. */
export function endingAt(motions: Motion[], turns: number): Motion[] {
  const last = motions.length - 1;
  const off = turns - motions[last].turns;
  return motions.map((motion, i) => ({ ...motion, turns: motion.turns + (off * i) / last }));
}
