import type { Hertz } from '../../units.js';

/** How finely a mount is meshed. */
export interface Accuracy {
  /** The mesh follows the wavelength of this frequency, unless the mount is too large for the budget. */
  highest: Hertz;
  /** Most to which a mount is solved whose cells, as many as they must be at least, follow shorter waves. */
  reach: Hertz;
  /** Nodes a wavelength there, at least. */
  perWave: number;
  /** Cells over a side that ends freely and over one that is folded, at least, whatever the wavelength. */
  cells: { free: number; folded: number };
  /** Most nodes of a quarter; a larger mount is solved to a lower frequency. */
  budget: number;
  /** Stated error of the level in front of the cone up to the highest frequency, away from sharp dips and resonances. */
  errorDb: number;
}

/**
 * `draft` while a size is dragged, `full` once it rests. The errors are those seen against meshes twice as fine
 * and against the exact disc (docs/models/wave-solution.md); the frequency of a resonance is within 1 % at `full`.
 */
export const ACCURACY = {
  draft: { highest: 3000, reach: 8000, perWave: 8, cells: { free: 8, folded: 4 }, budget: 240, errorDb: 0.6 },
  full: {
    highest: 10000,
    reach: 10000,
    perWave: 6.5,
    cells: { free: 20, folded: 6 },
    budget: 600,
    errorDb: 0.3
  }
} as const satisfies Record<string, Accuracy>;

export type AccuracyName = keyof typeof ACCURACY;
