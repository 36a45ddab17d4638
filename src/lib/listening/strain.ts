import type { Hertz } from '../units.js';
import { peak } from './peak.js';

/** What a signal that repeats for ever asks of what it drives. */
export interface Strain {
  /** Largest absolute value. */
  peak: number;
  /** Mean of the square over the whole loop. */
  meanSquare: number;
  /** The largest mean of the square over a second; over the whole loop where it is shorter than that. */
  loudestSecond: number;
}

/**
 * @param samples one turn of the loop, at least one sample
 * @throws RangeError for an empty loop
 */
export function strain(samples: Float32Array, sampleRate: Hertz): Strain {
  const { length } = samples;
  if (length === 0) throw new RangeError('a loop must have at least 1 sample, got 0');
  const window = Math.min(length, Math.round(sampleRate));
  let [sum, within] = [0, 0];
  for (let i = 0; i < length; i++) {
    sum += samples[i] * samples[i];
    if (i < window) within = sum;
  }
  let most = within;
  // the second moves on round the seam
  for (let i = 0; i < length; i++) {
    within += samples[(i + window) % length] ** 2 - samples[i] ** 2;
    if (within > most) most = within;
  }
  return { peak: peak(samples), meanSquare: sum / length, loudestSecond: most / window };
}
