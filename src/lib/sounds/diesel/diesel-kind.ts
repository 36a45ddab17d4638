import { filter, section } from '../blocks/filter.js';
import { FULL_NOTCH } from '../driving.js';
import type { MovingKind } from '../sound-kind.js';
import { block } from './block.js';
import { addCharger } from './chargers.js';
import {
  type Diesel,
  DIESEL_KNOBS,
  dieselEffort,
  dieselRpm,
  firingRate,
  patternRate,
  patternTurns
} from './diesel.js';
import { exhaust } from './exhaust.js';
import { firingsAlong } from './firings.js';
import { addIntake } from './intake.js';
import { outdoors } from './outdoors.js';
import { addFans, addHum } from './rotors.js';
import { slowNoise } from './slow-noise.js';

/** Everything is scaled so that notch 4 comes near −23 LUFS. */
const LEVEL = 0.4;

/** By how much the effort rises with the load from idle to full. */
function loadRange(sound: Diesel): number {
  return dieselEffort({ ...sound, notch: FULL_NOTCH }) - dieselEffort({ ...sound, notch: 0 });
}

/**
 * A diesel engine of a locomotive, as it is heard beside the track. How it is made: docs/models/diesel-sound.md.
 * `target` and `render` throw a RangeError if full speed is below idle speed.
 */
export const DIESEL_KIND: MovingKind<Diesel> = {
  knobs: DIESEL_KNOBS,
  patternTurns,
  target: (sound) => ({ speed: dieselRpm(sound) / 60, effort: dieselEffort(sound) }),
  dynamics: (sound) => ({
    range: (dieselRpm({ ...sound, notch: FULL_NOTCH }) - sound.idleRpm) / 60,
    rise: 6,
    fall: 4.3,
    answer: 0.2,
    loading: sound.loading > 0 ? loadRange(sound) / sound.loading : Infinity,
    spoolUp: 2.5,
    spoolDown: 1.5
  }),
  marks: (sound) => {
    const rpm = dieselRpm(sound);
    return [
      { frequency: firingRate(sound, rpm), name: 'firing rate', harmonics: 8 },
      { frequency: patternRate(sound, rpm), name: 'all cylinders once', harmonics: 1 }
    ];
  },
  render: (sound, course, span) => {
    dieselRpm(sound);
    const slow = slowNoise(span);
    const firings = firingsAlong(sound, course, span, slow);
    const sum = exhaust(sound, firings, course, span);
    addIntake(sum, sound, firings, span);
    const metal = block(sound, firings, course, span);
    const clatter = 1.1 * sound.clatter;
    for (let i = 0; i < sum.length; i++) sum[i] += clatter * metal[i];
    addCharger(sum, sound, course, span, slow);
    addFans(sum, sound, course, span, slow);
    addHum(sum, sound, course, span);
    return filter(outdoors(sum, span), section('highPass', 28, 0.7, span.sampleRate), span, LEVEL);
  }
};
