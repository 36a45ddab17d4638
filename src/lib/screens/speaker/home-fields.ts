import {
  HOME_NAMES,
  type HomeFigure,
  type HomeMeasurement,
  type HomeReading,
  type HomeReadings
} from '../../acoustics/speaker/home-measurement.js';
import { inDigits } from '../../format/in-digits.js';

/** What reads, each as well as the other. */
export type ErrorKind = 'ohms' | 'resistor' | 'volts' | 'tone' | 'cone' | 'mass' | 'volume';

export const ERROR_NAMES: Readonly<Record<ErrorKind, string>> = {
  ohms: 'ohmmeter',
  resistor: 'resistor',
  volts: 'voltmeter',
  tone: 'finding a tone',
  cone: 'cone area',
  mass: 'scales',
  volume: 'volume of the box'
};

/** In percent: a simple meter, a metal film resistor, a tone found by ear and meter, letter scales (common practice). */
export const USUAL_ERRORS: Readonly<Record<ErrorKind, number>> = {
  ohms: 2,
  resistor: 1,
  volts: 1,
  tone: 1,
  cone: 4,
  mass: 2,
  volume: 3
};

const KINDS: Readonly<Record<HomeReading, ErrorKind>> = {
  ...{
    coil: 'ohms',
    resistor: 'resistor',
    speakerVolts: 'volts',
    resistorVolts: 'volts',
    fs: 'tone',
    f1: 'tone',
    f2: 'tone'
  },
  ...{ cone: 'cone', addedMass: 'mass', withMass: 'tone', boxVolume: 'volume', inBox: 'tone' },
  ...{ boxSpeakerVolts: 'volts', boxResistorVolts: 'volts', boxF1: 'tone', boxF2: 'tone' }
};

/** The errors of readings, in their own units. */
export function errorsOf(readings: HomeReadings, percent: Readonly<Record<ErrorKind, number>>): HomeReadings {
  return Object.fromEntries(
    (Object.entries(readings) as [HomeReading, number][]).map(([key, value]) => [
      key,
      (value * percent[KINDS[key]]) / 100
    ])
  );
}

export interface HomeField {
  name: string;
  unit: string;
  /** What one in SI is in that unit. */
  factor: number;
}

const field = (key: HomeReading, unit: string, factor = 1): HomeField => ({
  name: HOME_NAMES[key],
  unit,
  factor
});

export const HOME_FIELDS: Readonly<Record<Exclude<HomeReading, 'cone'>, HomeField>> = {
  coil: field('coil', 'Ω'),
  resistor: field('resistor', 'Ω'),
  fs: field('fs', 'Hz'),
  speakerVolts: field('speakerVolts', 'V'),
  resistorVolts: field('resistorVolts', 'V'),
  f1: field('f1', 'Hz'),
  f2: field('f2', 'Hz'),
  addedMass: field('addedMass', 'g', 1e3),
  withMass: field('withMass', 'Hz'),
  boxVolume: field('boxVolume', 'cm³', 1e6),
  inBox: field('inBox', 'Hz'),
  boxSpeakerVolts: field('boxSpeakerVolts', 'V'),
  boxResistorVolts: field('boxResistorVolts', 'V'),
  boxF1: field('boxF1', 'Hz'),
  boxF2: field('boxF2', 'Hz')
};

const RESULTS: readonly (readonly [HomeFigure, string, string, number])[] = [
  ['fs', 'resonance', 'Hz', 1],
  ['re', 'coil resistance', 'Ω', 1],
  ['qms', 'mechanical Q', '', 1],
  ['qes', 'electrical Q', '', 1],
  ['qts', 'total Q', '', 1],
  ['mms', 'moving mass', 'g', 1e3],
  ['cms', 'compliance', 'mm/N', 1e3],
  ['bl', 'force factor', 'T·m', 1],
  ['vas', 'equivalent volume', 'cm³', 1e6]
];

/** What was measured, each figure with its error: as many digits as the error leaves. */
export function resultsOf({ figures, errors }: HomeMeasurement): { name: string; figure: string }[] {
  return RESULTS.map(([key, name, unit, factor]) => ({
    name,
    figure: `${withError(figures[key] * factor, errors[key] * factor)}${unit && ` ${unit}`}`
  }));
}

/** *0.55 ± 0.03*: the error in two digits below 3 and else in one, the figure to the same place. */
export function withError(value: number, error: number): string {
  if (!(error > 0)) return inDigits(value, 4);
  const power = Math.floor(Math.log10(error));
  const digits = error / 10 ** power < 2.95 ? 1 : 0;
  const places = Math.max(0, digits - power);
  const step = 10 ** (power - digits);
  const written = (x: number) => (places > 0 ? x.toFixed(places) : String(Math.round(x / step) * step));
  return `${written(value)} ± ${written(error)}`;
}
