import type { Seconds } from '../../units.js';

/** What is moving in the wave picture. */
export type Moving = 'tone' | 'puff';

/** How long one period of a tone takes on the screen, whatever its frequency, and how long a whole puff. */
export const SHOWN: Record<Moving, Seconds> = { tone: 1.6, puff: 8 };
/** A frame that comes later than this, as after sleep, does not make the picture jump. */
const LONGEST: Seconds = 0.1;

/**
 * The share of a period, or of a puff, that is reached after so many seconds before the screen: a tone begins again, a puff
 * rests at its end.
 */
export function movedOn(moving: Moving, share: number, seconds: Seconds): number {
  const next = share + Math.min(LONGEST, Math.max(0, seconds)) / SHOWN[moving];
  return moving === 'tone' ? next % 1 : Math.min(1, next);
}

/** Whether time still goes on: a puff is over once it is at its end. */
export function stillMoves(moving: Moving, share: number): boolean {
  return moving === 'tone' || share < 1;
}
