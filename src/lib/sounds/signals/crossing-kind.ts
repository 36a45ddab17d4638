import type { Hertz, Seconds } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import { random } from '../blocks/random.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { loopSpan } from '../blocks/span.js';
import { checkKnobs } from '../knob.js';
import type { StillKind } from '../sound-kind.js';
import { addBurst } from './burst.js';
import { CROSSING_KNOBS, type Crossing } from './crossing.js';
import { outdoors } from './outdoors.js';
import { cast, type Partial, type Pattern, strike } from './struck-metal.js';

/** About how long a loop lasts. */
const LOOP: Seconds = 6;
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
const LEVEL = 0.1;

/**
 * A level crossing's bell: a hammer, driven by a magnet, on one gong or on two in turn. The loop lasts about six seconds
 * and holds a whole number of strokes on each gong; the strokes' mean rate is exactly that of the knob.
 */
export const CROSSING_KIND: StillKind<Crossing> = {
  knobs: CROSSING_KNOBS,
  marks: (crossing) =>
    gongsOf(crossing).flatMap((partials, gong) =>
      partials.slice(1, 5).map(({ name, frequency }) => ({
        name: crossing.gongs > 1 ? `${name}, gong ${gong + 1}` : name,
        frequency,
        harmonics: 1
      }))
    ),
  render(crossing: Crossing, sampleRate: Hertz) {
    checkKnobs(CROSSING_KNOBS, crossing);
    validSampleRate(sampleRate);
    const { gongs, rate, seed } = crossing;
    const strokes = gongs * Math.max(1, Math.round((LOOP * rate) / gongs));
    const length = Math.round((strokes / rate) * sampleRate);
    const span = loopSpan(length, sampleRate, seed);
    const partials = gongsOf(crossing);
    const metal = new Float32Array(length);
    const hammer = new Float32Array(length);
    const noise = span.noise(1);
    for (let n = 0; n < strokes; n++) {
      const chance = random(Math.imul(seed + 1, 6151) + n);
      const at = ((n + 0.15 + 0.012 * chance.gaussian()) * length) / strokes;
      const strength = 10 ** ((0.7 * chance.gaussian()) / 20);
      strike(metal, span, partials[n % gongs], at, strength, 11000 * strength, chance);
      addBurst(hammer, span, noise, at, 0.0002, 0.003, 0.8 * strength);
      // The magnet lets go of its armature a third of the way to the next stroke: a dry click.
      addBurst(hammer, span, noise, at + (0.35 * length) / strokes, 0.0003, 0.0025, 0.07);
    }
    filter(hammer, section('bandPass', 3800, 0.5, sampleRate), span, 1, metal);
    const heard = outdoors(metal, span);
    return heard.map((x) => LEVEL * x);
  }
};

function gongsOf({ gongs, pitch, seed }: Crossing): Partial[][] {
  return Array.from({ length: gongs }, (_, gong) =>
    cast(PARTIALS, pitch * (gong === 0 ? 1 : SECOND), DECAY, SCATTER, (seed ^ 0xc705) + 977 * gong)
  );
}
