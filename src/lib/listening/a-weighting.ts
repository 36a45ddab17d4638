import type { Decibels, Hertz } from '../units.js';

/** The four poles of the weighting, IEC 61672-1:2013, annex E. */
const POLES: readonly Hertz[] = [20.598997, 107.65265, 737.86223, 12194.217];

/**
 * The A-weighting: 20·log10 of f4²·f⁴ / ((f² + f1²)·√(f² + f2²)·√(f² + f3²)·(f² + f4²)), 0 dB at 1 kHz (IEC 61672-1:2013, 5.5 and
 * annex E; the pole frequencies and the table it is tested against from memory).
 *
 * @param frequency above 0
 */
export function aWeightingDb(frequency: Hertz): Decibels {
  return 20 * Math.log10(weight(frequency) / weight(1000));
}

function weight(frequency: Hertz): number {
  const square = frequency * frequency;
  const [f1, f2, f3, f4] = POLES.map((pole) => pole * pole);
  return (square * square) / ((square + f1) * Math.sqrt((square + f2) * (square + f3)) * (square + f4));
}

/** The A-weighted level of all third octaves together, each weighted at its centre; −Infinity for silence. */
export function aWeightedLevel(bands: readonly { centre: Hertz }[], levelsDb: ArrayLike<Decibels>): Decibels {
  return (
    10 *
    Math.log10(
      bands.reduce((sum, { centre }, i) => sum + 10 ** ((levelsDb[i] + aWeightingDb(centre)) / 10), 0)
    )
  );
}
