import { lineLevels } from '../listening/line-levels.js';
import type { SoundFigures } from '../listening/sound-figures.js';
import { levelDb } from '../numeric/level-db.js';
import type { MarkedRate } from '../sounds/sound-kind.js';
import type { Decibels, Hertz } from '../units.js';
import type { Stand } from './stand.js';

/** One multiple of a sound's rate, and what each stand lets through of it. */
export interface Harmonic {
  number: number;
  frequency: Hertz;
  /** In the sound itself, against its strongest harmonic; NaN where its spectrum is too coarse to tell. */
  ownDb: Decibels;
  /** What is let through of it by each stand, against 0 dB of the bench (same-drive.ts); null where none can be. */
  throughDb: (Decibels | null)[];
}

/** The marked multiples of a rate, in the sound and behind every stand. */
export function harmonicsOf(
  { frequency, harmonics }: MarkedRate,
  { power, binWidth }: SoundFigures,
  stands: readonly Stand[]
): Harmonic[] {
  const highest = (power.length - 1) * binWidth;
  const frequencies = Float64Array.from({ length: harmonics }, (_, i) => (i + 1) * frequency).filter(
    (each) => each < highest
  );
  const own = lineLevels(power, binWidth, Array.from(frequencies));
  const through = stands.map(({ computed }) => computed && levelDb(computed.answer.respond(frequencies)));
  return Array.from(frequencies, (each, i) => ({
    number: i + 1,
    frequency: each,
    ownDb: own[i],
    throughDb: through.map((levels) => levels && levels[i])
  }));
}
