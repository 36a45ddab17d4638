import type { Hertz, Seconds } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import { random } from '../blocks/random.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { loopSpan } from '../blocks/span.js';
import { checkKnobs } from '../knob.js';
import type { StillSource } from '../sound-kind.js';
import { addBurst } from './burst.js';
import { CROSSING_KNOBS, type Crossing } from './crossing.js';
import { CROSSING_KIND, gongsOf } from './crossing-kind.js';
import { outdoors } from './outdoors.js';
import { strike } from './struck-metal.js';

/** About how long a loop lasts. */
const LOOP: Seconds = 6;
const LEVEL = 0.1;

/**
 * A level crossing's bell: a hammer, driven by a magnet, on one gong or on two in turn. The loop lasts about six seconds
 * and holds a whole number of strokes on each gong; the strokes' mean rate is exactly that of the knob.
 */
export const CROSSING_SOURCE: StillSource<Crossing> = {
  ...CROSSING_KIND,
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
