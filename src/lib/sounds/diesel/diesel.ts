import type { Hertz } from '../../units.js';
import { FULL_NOTCH } from '../driving.js';
import { type KnobValues, type SoundKnobs, seedKnob, shareKnob } from '../knob.js';

/** What the engine needs for itself, as a share of its full fuel: at idle, and so much more at full speed. */
const OWN = { idle: 0.1, more: 0.06 };
/** Above its own needs the pull grows a little faster than the speed. */
const PULL = 1.15;

/** The knobs of a diesel engine. Usual values are those of a medium-speed engine (common practice, from memory). */
export const DIESEL_KNOBS = {
  notch: { type: 'number', name: 'notch', unit: 'notch', min: 0, max: FULL_NOTCH, step: 1, usual: 4 },
  load: shareKnob('load', 0.85),
  loading: { type: 'number', name: 'time until full load', unit: 's', min: 0, max: 30, step: 1, usual: 22 },
  cylinders: {
    type: 'number',
    name: 'number of cylinders',
    unit: 'count',
    min: 1,
    max: 20,
    step: 1,
    usual: 12,
    whole: true
  },
  layout: { type: 'choice', name: 'layout', options: ['in-line', 'vee'], usual: 'vee' },
  cycle: { type: 'choice', name: 'cycle', options: ['four-stroke', 'two-stroke'], usual: 'four-stroke' },
  charging: {
    type: 'choice',
    name: 'charging',
    options: ['none', 'turbocharger', 'blower'],
    usual: 'turbocharger'
  },
  idleRpm: { type: 'number', name: 'idle speed', unit: 'rpm', min: 200, max: 1200, step: 5, usual: 420 },
  fullRpm: { type: 'number', name: 'full speed', unit: 'rpm', min: 400, max: 2500, step: 5, usual: 980 },
  unevenness: shareKnob('unevenness of the cylinders', 0.5),
  silencer: shareKnob('silencer', 0.5),
  clatter: shareKnob('knock and valve train', 0.5),
  fans: shareKnob('cooling fans', 0.5),
  hum: shareKnob('hum of the alternator', 0.3),
  seed: seedKnob(41)
} as const satisfies SoundKnobs;

/** A diesel engine at a notch of its lever; `seed` is what makes it an individual. */
export type Diesel = { kind: 'diesel'; name: string } & KnobValues<typeof DIESEL_KNOBS>;

/**
 * Turns a minute at the notch of an engine. The first notch pulls little above idle speed (common practice): 0.05 of the range
 * from idle to full, then 0.15 more a notch up to half of it at notch 4, then an eighth. Straight between notches.
 * @throws RangeError if full speed is below idle speed
 */
export function dieselRpm({ notch, idleRpm, fullRpm }: Diesel): number {
  if (fullRpm < idleRpm)
    throw new RangeError(`full speed must be at least the idle speed of ${idleRpm} rpm, got ${fullRpm}`);
  const share = Math.max(0.05 * notch, Math.min(0.15 * notch - 0.1, notch / FULL_NOTCH));
  return idleRpm + (fullRpm - idleRpm) * share;
}

/** Rate of firings: rpm/60·cylinders for a two-stroke engine, half of it for a four-stroke one (kinematics). */
export function firingRate(sound: Diesel, rpm: number): Hertz {
  return patternRate(sound, rpm) * sound.cylinders;
}

/** Rate at which the pattern of unequal cylinders comes round: every turn (two-stroke), every other (four-stroke). */
export function patternRate(sound: Diesel, rpm: number): Hertz {
  return rpm / 60 / patternTurns(sound);
}

/** Turns of the crank in which every cylinder fires once: one (two-stroke) or two (four-stroke). */
export function patternTurns({ cycle }: Diesel): number {
  return cycle === 'two-stroke' ? 1 : 2;
}

/**
 * Fuel for each firing once the engine runs steadily, as a share of the most there is, 0.1 … 1: what it needs for
 * itself, and above that what it pulls with, load·(notch/8)^1.15 of the rest. The load alone can change the effort
 * at the same speed.
 */
export function dieselEffort({ notch, load }: Diesel): number {
  const share = notch / FULL_NOTCH;
  const own = OWN.idle + OWN.more * share;
  return own + (1 - own) * load * share ** PULL;
}

/** How large an engine is beside a medium-speed one: fast engines are small, √(1000 rpm / full speed). */
export function dieselSize({ fullRpm }: Diesel): number {
  return Math.sqrt(1000 / fullRpm);
}
