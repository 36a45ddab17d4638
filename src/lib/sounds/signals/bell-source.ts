import type { Hertz, Seconds } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import { random } from '../blocks/random.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { loopSpan } from '../blocks/span.js';
import { checkKnobs } from '../knob.js';
import type { StillSource } from '../sound-kind.js';
import { BELL_KNOBS, type Bell } from './bell.js';
import { BELL_KIND, partialsOf } from './bell-kind.js';
import { addBurst } from './burst.js';
import { outdoors } from './outdoors.js';
import { strike } from './struck-metal.js';

/** About how long a loop lasts. */
const LOOP: Seconds = 7;

const LEVEL = 0.1;

/**
 * An engine's bell, rung steadily. The loop holds an even number of strokes, the clapper meeting either side of the bell
 * in turn, and lasts about seven seconds; every stroke differs a little in time, strength and colour. The rate of the
 * loop's strokes is exactly that of the knob.
 */
export const BELL_SOURCE: StillSource<Bell> = {
  ...BELL_KIND,
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
