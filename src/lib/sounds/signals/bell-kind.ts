import type { StillKind } from '../sound-kind.js';
import { BELL_KNOBS, type Bell } from './bell.js';
import { cast, type Partial, type Pattern } from './struck-metal.js';

/**
 * Partials of a bell as shares of the nominal, and how long they last. The first five stand near where those of a tuned
 * bell do (hum 0.25, prime 0.5, tierce 0.6, quint 0.75; T. D. Rossing and R. Perrin, Applied Acoustics 20 (1987) 41, from
 * memory), but this bell is not tuned: they are moved, and moved again by the seed.
 */
const PARTIALS: readonly Pattern[] = [
  { name: 'hum', ratio: 0.29, decay: 1.6, level: 0.35 },
  { name: 'prime', ratio: 0.54, decay: 1.3, level: 0.6 },
  { name: 'tierce', ratio: 0.64, decay: 1.2, level: 0.75 },
  { name: 'quint', ratio: 0.8, decay: 0.9, level: 0.3 },
  { name: 'nominal', ratio: 1, decay: 1, level: 1 },
  { name: 'sixth partial', ratio: 1.29, decay: 0.6, level: 0.4 },
  { name: 'seventh partial', ratio: 1.56, decay: 0.55, level: 0.7 },
  { name: 'eighth partial', ratio: 2.07, decay: 0.4, level: 0.75 },
  { name: 'ninth partial', ratio: 2.63, decay: 0.3, level: 0.7 },
  { name: 'tenth partial', ratio: 3.22, decay: 0.23, level: 0.6 },
  { name: 'eleventh partial', ratio: 3.86, decay: 0.18, level: 0.55 },
  { name: 'twelfth partial', ratio: 4.55, decay: 0.15, level: 0.5 },
  { name: 'thirteenth partial', ratio: 5.3, decay: 0.12, level: 0.5 },
  { name: 'fourteenth partial', ratio: 6.1, decay: 0.1, level: 0.45 }
];
const SCATTER = 0.035;

/** An engine's bell. */
export const BELL_KIND: StillKind<Bell> = {
  knobs: BELL_KNOBS,
  marks: (bell) =>
    partialsOf(bell)
      .slice(0, 9)
      .sort((a, b) => (b.name === 'nominal' ? 1 : a.name === 'nominal' ? -1 : a.frequency - b.frequency))
      .map(({ name, frequency }) => ({ name, frequency, harmonics: 1 }))
};

/** The partials of this very bell. */
export function partialsOf({ pitch, decay, seed }: Bell): Partial[] {
  return cast(PARTIALS, pitch, decay, SCATTER, seed ^ 0xbe11);
}
