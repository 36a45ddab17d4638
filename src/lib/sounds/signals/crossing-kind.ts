import type { Seconds } from '../../units.js';
import type { StillKind } from '../sound-kind.js';
import { CROSSING_KNOBS, type Crossing } from './crossing.js';
import { cast, type Partial, type Pattern } from './struck-metal.js';

/** The second gong's pitch as a share of the first's. */
const SECOND = 0.87;
/** Time in which the pitch that one hears falls by 60 dB: gongs on a post are held fast in their middle. */
const DECAY: Seconds = 2.4;

/**
 * A shallow gong: partials of a dome, nearly evenly spaced above the second (as in the recordings named in
 * docs/models/signal-sounds.md), the higher the sooner gone.
 */
const PARTIALS: readonly Pattern[] = [
  { name: 'lowest partial', ratio: 0.57, decay: 1.3, level: 0.3 },
  { name: 'pitch', ratio: 1, decay: 1, level: 0.7 },
  { name: 'third partial', ratio: 1.5, decay: 0.9, level: 1 },
  { name: 'fourth partial', ratio: 1.97, decay: 0.65, level: 0.8 },
  { name: 'fifth partial', ratio: 2.5, decay: 0.5, level: 0.7 },
  { name: 'sixth partial', ratio: 3.05, decay: 0.4, level: 1 },
  { name: 'seventh partial', ratio: 3.66, decay: 0.3, level: 0.9 },
  { name: 'eighth partial', ratio: 4.3, decay: 0.22, level: 1 },
  { name: 'ninth partial', ratio: 5, decay: 0.19, level: 1 },
  { name: 'tenth partial', ratio: 5.75, decay: 0.17, level: 1.05 },
  { name: 'eleventh partial', ratio: 6.6, decay: 0.15, level: 1.05 },
  { name: 'twelfth partial', ratio: 7.6, decay: 0.14, level: 1.05 },
  { name: 'thirteenth partial', ratio: 8.7, decay: 0.13, level: 1 },
  { name: 'fourteenth partial', ratio: 9.9, decay: 0.12, level: 1.1 },
  { name: 'fifteenth partial', ratio: 11.3, decay: 0.11, level: 1 },
  { name: 'sixteenth partial', ratio: 12.9, decay: 0.1, level: 1 }
];
const SCATTER = 0.02;

/** A level crossing's bell. */
export const CROSSING_KIND: StillKind<Crossing> = {
  knobs: CROSSING_KNOBS,
  marks: (crossing) =>
    gongsOf(crossing).flatMap((partials, gong) =>
      partials.slice(1, 5).map(({ name, frequency }) => ({
        name: crossing.gongs > 1 ? `${name}, gong ${gong + 1}` : name,
        frequency,
        harmonics: 1
      }))
    )
};

/** The partials of its gong, or of each of the two. */
export function gongsOf({ gongs, pitch, seed }: Crossing): Partial[][] {
  return Array.from({ length: gongs }, (_, gong) =>
    cast(PARTIALS, pitch * (gong === 0 ? 1 : SECOND), DECAY, SCATTER, (seed ^ 0xc705) + 977 * gong)
  );
}
