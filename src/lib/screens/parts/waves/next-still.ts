/** How many stills tell a puff from its beginning to its end. */
const STEPS = 8;

/** How long each is seen. */
export const STILL_MS = 2500;

/**
 * The moment of a puff after this one, for one who wants no motion: the last is its end.
 *
 * @param at share of its time, 0 … 1
 */
export function nextStill(at: number): number {
  return Math.min(1, (Math.floor(at * STEPS + 1e-9) + 1) / STEPS);
}
