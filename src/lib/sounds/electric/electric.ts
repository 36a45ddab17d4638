import type { Hertz, MetresPerSecond } from '../../units.js';
import { FULL_NOTCH } from '../driving.js';
import { type KnobValues, type SoundKnobs, seedKnob, shareKnob } from '../knob.js';

/** What of an electric locomotive or motor coach can be set; ranges and usual values are common practice. */
export const ELECTRIC_KNOBS = {
  notch: { type: 'number', name: 'lever', unit: 'notch', min: 0, max: FULL_NOTCH, step: 1, usual: 0 },
  wheelDiameter: {
    type: 'number',
    name: 'wheel diameter',
    unit: 'm',
    min: 0.6,
    max: 1.4,
    step: 0.01,
    usual: 0.92
  },
  topSpeed: { type: 'number', name: 'top speed', unit: 'm/s', min: 8, max: 60, step: 0.1, usual: 33.3 },
  gearRatio: { type: 'number', name: 'gear ratio', unit: 'count', min: 1.5, max: 8, step: 0.1, usual: 5 },
  polePairs: {
    type: 'number',
    name: 'pole pairs of the motors',
    unit: 'count',
    min: 1,
    max: 4,
    step: 1,
    usual: 2,
    whole: true
  },
  lineFrequency: {
    type: 'choice',
    name: 'line frequency',
    options: ['16.7 Hz', '50 Hz', '60 Hz'],
    usual: '50 Hz'
  },
  inverter: shareKnob('inverter tones', 0.6),
  blowers: shareKnob('blowers', 0.5),
  hum: shareKnob('transformer hum', 0.5),
  gears: shareKnob('gears and wheels', 0.4),
  seed: seedKnob(90)
} as const satisfies SoundKnobs;

/** An electric locomotive or motor coach, as far as its sound needs it. */
export type Electric = { kind: 'electric'; name: string } & KnobValues<typeof ELECTRIC_KNOBS>;

/** Less of the lever than this does not move it. */
const STANDS_BELOW = 0.5;
/** Teeth of the pinion on a motor's shaft: a usual number. */
const PINION_TEETH = 17;

/** Speed at the notch: notch/8 of the top speed; below half a notch it stands. */
export function speedAt({ notch, topSpeed }: Pick<Electric, 'notch' | 'topSpeed'>): MetresPerSecond {
  return notch < STANDS_BELOW ? 0 : (topSpeed * notch) / FULL_NOTCH;
}

/** Turns of the wheels a second: v / (π·d), kinematics. */
export function wheelRate({ wheelDiameter }: Pick<Electric, 'wheelDiameter'>, speed: MetresPerSecond): Hertz {
  return speed / (Math.PI * wheelDiameter);
}

/** Teeth of the gear on the axle: the whole number nearest to the gear ratio times the seventeen of the pinion. */
export function axleTeeth({ gearRatio }: Pick<Electric, 'gearRatio'>): number {
  return Math.round(PINION_TEETH * gearRatio);
}

/** Periods of the motors' current in a turn of the wheels: pole pairs times the true ratio of the teeth; without slip. */
export function periodsPerTurn(sound: Pick<Electric, 'gearRatio' | 'polePairs'>): number {
  return (sound.polePairs * axleTeeth(sound)) / PINION_TEETH;
}

/** The hum of iron that the line magnetises both ways in each period: twice the line frequency. */
export function humRate({ lineFrequency }: Pick<Electric, 'lineFrequency'>): Hertz {
  return 2 * Number.parseFloat(lineFrequency);
}
