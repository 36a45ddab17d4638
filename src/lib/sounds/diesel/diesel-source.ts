import { addScaled } from '../blocks/add-scaled.js';
import { filter, section } from '../blocks/filter.js';
import type { MovingSource } from '../sound-kind.js';
import { block } from './block.js';
import { addCharger } from './chargers.js';
import { DIESEL_KIND } from './diesel-kind.js';
import { type Diesel, dieselRpm } from './diesel.js';
import { exhaust } from './exhaust.js';
import { firingsAlong } from './firings.js';
import { addIntake } from './intake.js';
import { outdoors } from './outdoors.js';
import { addFans, addHum } from './rotors.js';
import { slowNoise } from './slow-noise.js';

/** Everything is scaled so that notch 4 comes near −23 LUFS. */
const LEVEL = 0.4;

/**
 * A diesel engine of a locomotive, as it is heard beside the track. How it is made: docs/models/diesel-sound.md.
 * `target` and `render` throw a RangeError if full speed is below idle speed.
 */
export const DIESEL_SOURCE: MovingSource<Diesel> = {
  ...DIESEL_KIND,
  render: (sound, course, span) => {
    dieselRpm(sound);
    const slow = slowNoise(span);
    const firings = firingsAlong(sound, course, span, slow);
    const sum = exhaust(sound, firings, course, span);
    addIntake(sum, sound, firings, span);
    const metal = block(sound, firings, course, span);
    addScaled(sum, metal, 1.1 * sound.clatter);
    span.spare.giveBack(metal);
    addCharger(sum, sound, course, span, slow);
    addFans(sum, sound, course, span, slow);
    addHum(sum, sound, course, span);
    const heard = outdoors(sum, span);
    return filter(heard, section('highPass', 28, 0.7, span.sampleRate), span, LEVEL, sum.fill(0));
  }
};
