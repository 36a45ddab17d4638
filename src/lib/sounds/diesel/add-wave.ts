import type { Hertz } from '../../units.js';
import { addTable } from '../blocks/add-table.js';

/** Phase and level are worked out every so many samples. */
const STEP = 32;

/** Samples of the table of one period. */
const TABLE = 2048;

/** A tone along a span, worked out every 32 samples and linear in between. */
export interface Wave {
  /** Amplitudes of its partials, the fundamental first. */
  partials: readonly number[];
  /** Periods since any beginning, at a sample; in a loop they are whole over its length. */
  phase(sample: number): number;
  level(sample: number): number;
  /** The highest frequency that its fundamental comes to; partials above 0.45 of the sample rate are left out. */
  highest: Hertz;
}

/** Adds a tone to a signal: Σ partial·sin(2π·n·phase + a phase of the partial's own), by way of a table of one period. */
export function addWave(
  signal: Float32Array,
  { partials, phase, level, highest }: Wave,
  sampleRate: Hertz
): void {
  const heard = partials.filter((_, n) => (n + 1) * highest < 0.45 * sampleRate);
  if (heard.length === 0) return;
  const table = new Float32Array(TABLE + 1);
  heard.forEach((size, n) => {
    if (size === 0) return;
    // Partials that all start together would add up to a spike; quadratic phases spread them over the period.
    const start = (Math.PI * n * n) / heard.length;
    for (let i = 0; i <= TABLE; i++) table[i] += size * Math.sin((2 * Math.PI * (n + 1) * i) / TABLE + start);
  });
  addTable(signal, table, STEP, phase, level);
}
