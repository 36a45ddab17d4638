import type { Mount } from './mount.js';

/** Loss factor η of the air at a mount unless told: about what smooth walls take in a narrow shell. An assumption. */
export const USUAL_LOSS = 0.003;

/**
 * Loss factor η of the air at a mount, by which the wave number is k·(1 − jη). Only a shell can be given its own: friction at smooth
 * walls alone makes about 0.0015 (Kirchhoff's boundary layer, docs/models/wave-solution.md), a shell full of mechanism perhaps
 * 0.01 to 0.03 (an estimate; no measurement is known).
 */
export function lossOf(mount: Mount): number {
  return (mount.kind === 'shell' ? mount.loss : undefined) ?? USUAL_LOSS;
}
