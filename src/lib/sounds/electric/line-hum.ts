import type { Hertz } from '../../units.js';
import { addTable } from '../blocks/add-table.js';
import type { Span } from '../blocks/span.js';
import { eventChance } from '../blocks/event-chance.js';
import { type CourseSteps, STEP } from './course-steps.js';
import { type Electric, humRate } from './electric.js';
import { wholePhase } from './whole-phase.js';

/** Harmonics of the hum up to here are made. */
const HIGHEST: Hertz = 1300;

/** Points of a period's table, a power of two. */
const SIZE = 4096;

/** How strongly transformer and car body send out a frequency: broadly around 250 Hz (by eye on spectrograms). */
function bodyShare(frequency: Hertz): number {
  return (frequency / 150) ** 1.5 / (1 + (frequency / 240) ** 3.2);
}

/**
 * Adds the hum of transformer and chokes to a sum: twice the line frequency and its multiples, by the clock and not by the
 * wheels, a little louder with the current.
 *
 * @param gain RMS at full `hum` and half effort
 */
export function addLineHum(
  sum: Float32Array,
  sound: Electric,
  steps: CourseSteps,
  span: Span,
  gain: number
): void {
  if (sound.hum === 0) return;
  const { sampleRate } = span;
  const rate = humRate(sound);
  const table = new Float32Array(SIZE + 1);
  let power = 0;
  for (let n = 1; n * rate < Math.min(HIGHEST, 0.45 * sampleRate); n++) {
    const chance = eventChance(sound.seed, 10, n);
    const size = bodyShare(n * rate) * Math.exp(0.35 * chance.gaussian());
    const start = chance.uniform();
    power += size * size * 0.5;
    for (let i = 0; i <= SIZE; i++) table[i] += size * Math.sin(2 * Math.PI * ((n * i) / SIZE + start));
  }
  const scale = (gain * sound.hum) / Math.sqrt(power);
  const phase = wholePhase(steps, span, 0, rate);
  const level = steps.effort.map((effort) => scale * (0.75 + 0.5 * effort));
  const at = (sample: number) => Math.ceil(sample / STEP);
  addTable(
    sum,
    table,
    STEP,
    (sample) => phase[at(sample)],
    (sample) => level[at(sample)]
  );
}
