import type { Metres } from '../../units.js';
import { kernelTable } from '../assembly/kernel-table.js';
import type { Complex } from '../../numeric/complex.js';

/** The kernel (1 + jkr)·e^{−jkr}/r³ = 1/r³ + k²/(2r) − F1(r) of a dipole at one wave number. */
export interface DipoleKernel {
  /** k²/2, complex where the wave dies away. */
  half: Complex;
  /** F1 of `kernelTable` alone, smooth and of third order in k: re, im of every sample, one after the other. */
  values: Float64Array;
  /** Samples a metre. */
  perMetre: number;
}

/**
 * @param k at least 0
 * @param loss the wave number used is k·(1 − j·loss)
 * @param reach the largest distance that is asked for
 */
export function dipoleKernel(k: number, loss: number, reach: Metres): DipoleKernel {
  const half = { re: (k * k * (1 - loss * loss)) / 2, im: -k * k * loss };
  // without frequency there is no remainder
  if (k === 0) return { half, values: new Float64Array(4), perMetre: 0 };
  const { values, steps } = kernelTable(k, loss, reach);
  const own = new Float64Array(values.length / 2);
  for (let i = 0; i < own.length; i += 2) {
    own[i] = values[2 * i];
    own[i + 1] = values[2 * i + 1];
  }
  return { half, values: own, perMetre: steps / reach };
}
