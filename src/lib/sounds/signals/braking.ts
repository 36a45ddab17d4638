import type { Seconds } from '../../units.js';

/** When the blocks touch, and when the train has stopped. */
export const TOUCH: Seconds = 0.15;
export const STOP: Seconds = 6.3;
/** Turns a second of a wheel when the blocks touch. */
const TURNING = 3.4;

/** How fast the wheels turn, as a share of how fast they did when the blocks touched: evenly slower. */
export function speedAt(t: Seconds): number {
  return t >= STOP ? 0 : Math.min(1, (STOP - t) / (STOP - TOUCH));
}

/** Turns of a wheel since the blocks touched. */
export function turnsAt(t: Seconds): number {
  const braked = Math.max(0, t - TOUCH);
  return TURNING * (braked - braked ** 2 / (2 * (STOP - TOUCH)));
}
