import type { Hertz, MetresPerSecond } from '../../units.js';
import { FULL_NOTCH } from '../driving.js';
import { type KnobValues, type SoundKnobs, seedKnob, shareKnob } from '../knob.js';

/** What of a steam locomotive can be set; ranges and usual values are common practice. */
export const STEAM_KNOBS = {
  notch: { type: 'number', name: 'lever', unit: 'notch', min: 0, max: FULL_NOTCH, step: 1, usual: 0 },
  cylinders: {
    type: 'number',
    name: 'cylinders',
    unit: 'count',
    min: 2,
    max: 3,
    step: 1,
    usual: 2,
    whole: true
  },
  driverDiameter: {
    type: 'number',
    name: 'driver diameter',
    unit: 'm',
    min: 0.8,
    max: 2.2,
    step: 0.001,
    usual: 1.753
  },
  topSpeed: { type: 'number', name: 'top speed', unit: 'm/s', min: 8, max: 45, step: 0.1, usual: 26.8 },
  cutoff: { type: 'number', name: 'cutoff', unit: 'share', min: 0.1, max: 0.8, step: 0.01, usual: 0.35 },
  load: shareKnob('load', 0.6),
  drainCocks: { type: 'switch', name: 'drain cocks open', usual: false },
  unevenness: shareKnob('unevenness of the beats', 0.4),
  rods: shareKnob('rod clank', 0.4),
  blower: shareKnob('blower', 0.5),
  seed: seedKnob(8)
} as const satisfies SoundKnobs;

/** A steam locomotive, as far as its sound needs it. */
export type Steam = { kind: 'steam'; name: string } & KnobValues<typeof STEAM_KNOBS>;

/** Less of the lever than this does not move the engine. */
const STANDS_BELOW = 0.5;

/** Beats of the exhaust in a turn of the drivers: every cylinder is double-acting (common practice). */
export function beatsPerTurn({ cylinders }: Pick<Steam, 'cylinders'>): number {
  return 2 * cylinders;
}

/** Turns of the drivers a second at a speed of the engine: v / (π·d), kinematics. */
export function driverRate({ driverDiameter }: Pick<Steam, 'driverDiameter'>, speed: MetresPerSecond): Hertz {
  return speed / (Math.PI * driverDiameter);
}

/** Beats a second at a speed of the engine: 2·cylinders·v / (π·d), kinematics. */
export function beatRate(sound: Pick<Steam, 'cylinders' | 'driverDiameter'>, speed: MetresPerSecond): Hertz {
  return beatsPerTurn(sound) * driverRate(sound, speed);
}

/** Speed at the notch: notch/8 of the top speed; below half a notch the engine stands. */
export function speedAt({ notch, topSpeed }: Pick<Steam, 'notch' | 'topSpeed'>): MetresPerSecond {
  return notch < STANDS_BELOW ? 0 : (topSpeed * notch) / FULL_NOTCH;
}
