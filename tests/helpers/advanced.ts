import { type Dynamics, type Motion, type Target, TICK, ticked } from '../../src/lib/sounds/motion/motion.js';
import type { Seconds } from '../../src/lib/units.js';

/** Where a motion is after a time, in whole ticks. */
export function advanced(motion: Motion, target: Target, dynamics: Dynamics, seconds: Seconds): Motion {
  let now = motion;
  for (let ticks = Math.round(seconds / TICK); ticks > 0; ticks--) now = ticked(now, target, dynamics);
  return now;
}
