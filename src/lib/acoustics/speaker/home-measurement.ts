import { propagatedErrors } from '../../numeric/propagated-errors.js';
import { airDensity, soundSpeed, type Air } from '../air.js';

/**
 * What one reads at the bench, in SI. A tone goes through a known resistor into the speaker, lying in free air. `fs` is where the
 * speaker's voltage is highest; there `speakerVolts` stand across it and `resistorVolts` across the resistor. `f1` and `f2` are where
 * |Z| is Re·√r0.
 */
export const PEAK_READINGS = [
  'coil',
  'resistor',
  'speakerVolts',
  'resistorVolts',
  'fs',
  'f1',
  'f2',
  'cone'
] as const;

/** How the moving mass is found: a known mass on the cone and the resonance with it, or a known tight box and the resonance in it. */
export const MASS_READINGS = {
  added: ['addedMass', 'withMass'],
  box: ['boxVolume', 'inBox']
} as const;

/** The peak of the speaker in its box, too: the voltages at the resonance there, and its f1 and f2. */
export const BOX_PEAK_READINGS = ['boxSpeakerVolts', 'boxResistorVolts', 'boxF1', 'boxF2'] as const;

export type HomeMethod = keyof typeof MASS_READINGS;
export type HomeReading =
  | (typeof PEAK_READINGS)[number]
  | (typeof MASS_READINGS)[HomeMethod][number]
  | (typeof BOX_PEAK_READINGS)[number];

/** Readings, or their errors. */
export type HomeReadings = Partial<Record<HomeReading, number>>;

/** What they are called in sentences. */
export const HOME_NAMES: Readonly<Record<HomeReading, string>> = {
  coil: 'coil by the ohmmeter',
  resistor: 'resistor',
  speakerVolts: 'volts across the speaker',
  resistorVolts: 'volts across the resistor',
  fs: 'resonance',
  f1: 'tone below it',
  f2: 'tone above it',
  cone: 'cone area',
  addedMass: 'added mass',
  withMass: 'resonance with the mass',
  boxVolume: 'volume of the box',
  inBox: 'resonance in the box',
  boxSpeakerVolts: 'volts across the speaker in the box',
  boxResistorVolts: 'volts across the resistor in the box',
  boxF1: 'tone below it in the box',
  boxF2: 'tone above it in the box'
};

export const HOME_FIGURES = ['re', 'r0', 'fs', 'qms', 'qes', 'qts', 'mms', 'cms', 'bl', 'vas'] as const;

/** Those of a sheet; `r0` is the impedance at the resonance over that of the coil. */
export type HomeFigure = (typeof HOME_FIGURES)[number];

export interface HomeMeasurement {
  figures: Record<HomeFigure, number>;
  /** What the errors of the readings make of each, in its own unit. */
  errors: Record<HomeFigure, number>;
  /** √(f1·f2)/fs − 1: 0 for a speaker, so that what is left of it is a slip, a leak or too strong a tone. */
  unevenness: number;
}

/** The readings of a method; in a box the peak there counts where all of it was read. */
export function readingsOf(method: HomeMethod, readings: HomeReadings): HomeReading[] {
  const boxPeak = method === 'box' && hasBoxPeak(readings);
  return [...PEAK_READINGS, ...MASS_READINGS[method], ...(boxPeak ? BOX_PEAK_READINGS : [])];
}

function hasBoxPeak(readings: HomeReadings): boolean {
  return BOX_PEAK_READINGS.every((key) => readings[key] !== undefined);
}

/**
 * The speaker from what was read of it: r0 = Z(fs)/Re with Z = R·U/U_R (real at the resonance), Qms = fs·√r0/(f2 − f1), Qes = Qms/(r0 − 1);
 * then Mms = Δm/((fs/f′)² − 1) by an added mass, or Vas = α·V by a box, α = (fc·Qec)/(fs·Qes) − 1 where its peak was read, and
 * (fc/fs)² − 1 otherwise; Bl² = 2π·fs·Mms·Re/Qes (R. H. Small, J. Audio Eng. Soc. 20 (1972) 383 and 798; methods as in IEC 60268-22, from
 * memory). The coil's inductance is left out.
 *
 * @param readings those of `readingsOf`, in SI
 * @param errors of the same readings; absent ones are 0. Standard errors give standard errors
 * @throws RangeError with one sentence where a reading is missing or cannot be
 */
export function homeMeasurement(
  method: HomeMethod,
  readings: HomeReadings,
  errors: HomeReadings,
  air: Air
): HomeMeasurement {
  const keys = readingsOf(method, readings);
  const missing = keys.filter((key) => readings[key] === undefined);
  if (missing.length > 0)
    throw new RangeError(`still to read: ${missing.map((key) => HOME_NAMES[key]).join(', ')}`);
  checkReadings(method, readings as Required<HomeReadings>);
  const work = (values: readonly number[]): number[] => {
    const moved = Object.fromEntries(keys.map((key, i) => [key, values[i]])) as Required<HomeReadings>;
    const figures = figuresOf(method, moved, air);
    return HOME_FIGURES.map((figure) => figures[figure]);
  };
  const values = keys.map((key) => readings[key]!);
  const named = (all: readonly number[]) =>
    Object.fromEntries(HOME_FIGURES.map((figure, i) => [figure, all[i]])) as Record<HomeFigure, number>;
  return {
    figures: named(work(values)),
    errors: named(
      propagatedErrors(
        work,
        values,
        keys.map((key) => errors[key] ?? 0)
      )
    ),
    unevenness: Math.sqrt(readings.f1! * readings.f2!) / readings.fs! - 1
  };
}

function figuresOf(method: HomeMethod, read: Required<HomeReadings>, air: Air): Record<HomeFigure, number> {
  const { coil, resistor, fs, f1, f2, cone } = read;
  const free = qsOf(coil, (resistor * read.speakerVolts) / read.resistorVolts, fs, f1, f2);
  const { r0, qms, qes } = free;
  const w = 2 * Math.PI * fs;
  const stiffness = airDensity(air) * soundSpeed(air) ** 2;
  let mms: number;
  if (method === 'added') mms = read.addedMass / ((fs / read.withMass) ** 2 - 1);
  else {
    const { inBox, boxF1, boxF2 } = read;
    const boxed = hasBoxPeak(read)
      ? qsOf(coil, (resistor * read.boxSpeakerVolts) / read.boxResistorVolts, inBox, boxF1, boxF2).qes / qes
      : inBox / fs;
    const alpha = (inBox / fs) * boxed - 1;
    mms = (stiffness * cone * cone) / (alpha * read.boxVolume * w * w);
  }
  const cms = 1 / (w * w * mms);
  return {
    ...{ re: coil, r0, fs, qms, qes, qts: 1 / (1 / qms + 1 / qes), mms, cms },
    bl: Math.sqrt((coil * w * mms) / qes),
    vas: stiffness * cone * cone * cms
  };
}

function qsOf(coil: number, peak: number, f0: number, f1: number, f2: number) {
  const r0 = peak / coil;
  const qms = (f0 * Math.sqrt(r0)) / (f2 - f1);
  return { r0, qms, qes: qms / (r0 - 1) };
}

/**
 * The voltage across the speaker at f1 and f2, the amplifier's left as it was at the resonance. There Z/Re = (2·r0 ± j·√r0·(r0 − 1))/(1 + r0),
 * which has the magnitude √r0 (from Z/Re = (r0 + jx)/(1 + jx) at x = ±√r0; R. H. Small 1972 for the impedance).
 *
 * @throws RangeError where a reading cannot be
 */
export function flankVolts({
  coil,
  resistor,
  speakerVolts,
  resistorVolts
}: Record<'coil' | 'resistor' | 'speakerVolts' | 'resistorVolts', number>): number {
  checkPeak(coil, resistor, speakerVolts, resistorVolts, '');
  const r0 = (resistor * speakerVolts) / resistorVolts / coil;
  const whole = Math.sqrt(resistor ** 2 + (4 * resistor * coil * r0) / (1 + r0) + coil ** 2 * r0);
  return ((speakerVolts + resistorVolts) * coil * Math.sqrt(r0)) / whole;
}

function checkReadings(method: HomeMethod, read: Required<HomeReadings>): void {
  for (const key of readingsOf(method, read))
    if (!(read[key] > 0 && read[key] < Infinity))
      throw new RangeError(`${HOME_NAMES[key]} must be above 0, got ${read[key]}`);
  const { coil, resistor, fs } = read;
  checkPeak(coil, resistor, read.speakerVolts, read.resistorVolts, '');
  checkFlanks(read.f1, fs, read.f2, '');
  if (method === 'added') {
    if (read.withMass >= fs) throw new RangeError('the added mass must lower the resonance: read both again');
    return;
  }
  if (read.inBox <= fs)
    throw new RangeError('the box must raise the resonance: it leaks, or a reading has slipped');
  if (!hasBoxPeak(read)) return;
  checkPeak(coil, resistor, read.boxSpeakerVolts, read.boxResistorVolts, ' in the box');
  checkFlanks(read.boxF1, read.inBox, read.boxF2, ' in the box');
  const boxed = figuresOf(method, read, { temperatureC: 20 });
  if (!(boxed.mms > 0))
    throw new RangeError(
      'the box must add stiffness: by its peak it has none; it leaks, or a reading has slipped'
    );
}

function checkPeak(coil: number, resistor: number, speaker: number, across: number, where: string): void {
  const peak = (resistor * speaker) / across;
  if (!(peak > coil))
    throw new RangeError(
      `at the resonance${where} the speaker must have more than its coil’s resistance: it reads ${peak.toPrecision(3)} Ω, the coil ${coil.toPrecision(3)} Ω`
    );
}

function checkFlanks(f1: number, f0: number, f2: number, where: string): void {
  if (!(f1 < f0 && f0 < f2))
    throw new RangeError(`the resonance${where} must lie between the tone below it and the tone above it`);
}
