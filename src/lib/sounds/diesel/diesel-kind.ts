import { FULL_NOTCH } from '../driving.js';
import type { MovingKind } from '../sound-kind.js';
import {
  type Diesel,
  DIESEL_KNOBS,
  dieselEffort,
  dieselRpm,
  firingRate,
  patternRate,
  patternTurns
} from './diesel.js';

/** By how much the effort rises with the load from idle to full. */
function loadRange(sound: Diesel): number {
  return dieselEffort({ ...sound, notch: FULL_NOTCH }) - dieselEffort({ ...sound, notch: 0 });
}

/**
 * A diesel engine of a locomotive; a turn is one of its crankshaft. `target` throws a RangeError if full speed is below
 * idle speed.
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
  }
};
