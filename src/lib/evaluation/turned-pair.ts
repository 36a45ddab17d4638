import type { Decibels } from '../units.js';

/** Which of two mounts is ahead, and by how much. */
export interface Ahead {
  /** Its place on the shelf. */
  index: number;
  byDb: Decibels;
}

/** Two mounts of which one is ahead in the hand and the other on the layout. */
export interface TurnedPair {
  hand: Ahead;
  layout: Ahead;
}

/** A lead that is told in whole decibels is one from here on. */
const LEAST: Decibels = 0.5;

/**
 * The two mounts of which the order turns over most between hand and layout: the lesser of their two leads is the largest. Null where
 * none does by as much as is told, 1 dB each way.
 *
 * @param hand loudness of each mount in the order of the shelf, in dB against whatever is the same for all; null or not finite where it
 * cannot be told
 * @param layout the same on the layout
 */
export function turnedPair(
  hand: readonly (Decibels | null)[],
  layout: readonly (Decibels | null)[]
): TurnedPair | null {
  const told = hand.map((_, i) => i).filter((i) => isTold(hand[i]) && isTold(layout[i]));
  let [best, least]: [TurnedPair | null, Decibels] = [null, 0];
  for (const first of told)
    for (const second of told) {
      const inHand = hand[first]! - hand[second]!;
      const onLayout = layout[second]! - layout[first]!;
      const lesser = Math.min(inHand, onLayout);
      if (lesser < LEAST || lesser <= least) continue;
      least = lesser;
      best = { hand: { index: first, byDb: inHand }, layout: { index: second, byDb: onLayout } };
    }
  return best;
}

function isTold(level: Decibels | null | undefined): level is Decibels {
  return level !== null && level !== undefined && Number.isFinite(level);
}
