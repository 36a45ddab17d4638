import type { Hertz, Seconds } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import { random } from '../blocks/random.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { loopSpan } from '../blocks/span.js';
import { checkKnobs } from '../knob.js';
import type { StillKind } from '../sound-kind.js';
import { BELL_KNOBS, type Bell } from './bell.js';
import { addBurst } from './burst.js';
import { outdoors } from './outdoors.js';
import { cast, type Partial, type Pattern, strike } from './struck-metal.js';

/** About how long a loop lasts. */
const LOOP: Seconds = 7;

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
const LEVEL = 0.1;

/**
 * An engine's bell, rung steadily. The loop holds an even number of strokes, the clapper meeting either side of the bell
 * in turn, and lasts about seven seconds; every stroke differs a little in time, strength and colour. The rate of the
 * loop's strokes is exactly that of the knob.
 */
export const BELL_KIND: StillKind<Bell> = {
  knobs: BELL_KNOBS,
  marks: (bell) =>
    partialsOf(bell)
      .slice(0, 9)
      .sort((a, b) => (b.name === 'nominal' ? 1 : a.name === 'nominal' ? -1 : a.frequency - b.frequency))
      .map(({ name, frequency }) => ({ name, frequency, harmonics: 1 })),
  render(bell: Bell, sampleRate: Hertz) {
    checkKnobs(BELL_KNOBS, bell);
    validSampleRate(sampleRate);
    const strokes = 2 * Math.max(1, Math.round((LOOP * bell.rate) / 2));
    const length = Math.round((strokes / bell.rate) * sampleRate);
    const span = loopSpan(length, sampleRate, bell.seed);
    const partials = partialsOf(bell);
    const bronze = new Float32Array(length);
    const clapper = new Float32Array(length);
    const noise = span.noise(1);
    for (let n = 0; n < strokes; n++) {
      const chance = random(Math.imul(bell.seed + 1, 7919) + n);
      const at = ((n + 0.1 + 0.02 * chance.gaussian()) * length) / strokes;
      const side = n % 2 === 0 ? 1 : 0.9;
      const strength = side * 10 ** ((0.9 * chance.gaussian()) / 20);
      strike(bronze, span, partials, at, strength, 4200 * strength, chance);
      addBurst(clapper, span, noise, at, 0.0003, 0.004, 0.5 * strength);
      addBurst(clapper, span, noise, at, 0.002, 0.02, 0.06 * strength);
    }
    filter(clapper, section('bandPass', 2600, 0.6, sampleRate), span, 0.8, bronze);
    filter(clapper, section('bandPass', 320, 1.2, sampleRate), span, 2, bronze);
    const heard = outdoors(bronze, span);
    return heard.map((x) => LEVEL * x);
  }
};

function partialsOf({ pitch, decay, seed }: Bell): Partial[] {
  return cast(PARTIALS, pitch, decay, SCATTER, seed ^ 0xbe11);
}
