import { airDensity, soundSpeed, type Air } from '../air.js';

/**
 * The figures of a maker's sheet, in SI, in the order in which they are trusted: what is read off the impedance curve first, what is
 * worked out of other figures later, and sensitivity last, which depends on how it was measured.
 */
export const SHEET_FIGURES = [
  're',
  'fs',
  'qms',
  'qes',
  'qts',
  'sd',
  'mms',
  'bl',
  'cms',
  'vas',
  'rms',
  'sensitivity',
  'sensitivityPerWatt'
] as const;

/**
 * Of a speaker: those of `Motor` and `MotorFigures`, the friction of the suspension Rms (kg/s), and the half-space sensitivity in Pa
 * at 1 m for 1 V and for 1 W into the resistance of its own coil.
 */
export type SheetFigure = (typeof SHEET_FIGURES)[number];

/** Some of the figures of a sheet. */
export type Sheet = Partial<Record<SheetFigure, number>>;

/** What they are called in sentences. */
export const SHEET_NAMES: Readonly<Record<SheetFigure, string>> = {
  re: 'coil resistance',
  fs: 'resonance',
  qms: 'mechanical Q',
  qes: 'electrical Q',
  qts: 'total Q',
  sd: 'cone area',
  mms: 'moving mass',
  bl: 'force factor',
  cms: 'compliance',
  vas: 'equivalent volume',
  rms: 'friction',
  sensitivity: 'sensitivity',
  sensitivityPerWatt: 'sensitivity'
};

/** A product of powers of figures that is the same for every speaker. */
export interface SheetRelation {
  /** As it is written. */
  formula: string;
  powers: Sheet;
  product: (air: Air) => number;
}

const TURN = 2 * Math.PI;

/**
 * What holds of every speaker, as products of powers (R. H. Small, "Direct-Radiator Loudspeaker System Analysis", J. Audio Eng. Soc. 20
 * (1972) 383); 1/Qts = 1/Qms + 1/Qes, which is a sum, stands apart (`Q_SUM`).
 */
export const SHEET_RELATIONS: readonly SheetRelation[] = [
  {
    formula: 'fs = 1/(2π·√(Mms·Cms))',
    powers: { fs: 1, mms: 0.5, cms: 0.5 },
    product: () => 1 / TURN
  },
  {
    formula: 'Vas = ρ·c²·Sd²·Cms',
    powers: { vas: 1, sd: -2, cms: -1 },
    product: (air) => airDensity(air) * soundSpeed(air) ** 2
  },
  {
    formula: 'Qes = 2π·fs·Mms·Re/Bl²',
    powers: { qes: 1, bl: 2, fs: -1, mms: -1, re: -1 },
    product: () => TURN
  },
  {
    formula: 'Qms = 2π·fs·Mms/Rms',
    powers: { qms: 1, rms: 1, fs: -1, mms: -1 },
    product: () => TURN
  },
  {
    formula: 'p = ρ·Sd·Bl/(2π·Mms·Re) at 1 m for 1 V',
    powers: { sensitivity: 1, mms: 1, re: 1, sd: -1, bl: -1 },
    product: (air) => airDensity(air) / TURN
  },
  {
    formula: '1 W into Re is √(1 W·Re)',
    powers: { sensitivityPerWatt: 1, sensitivity: -1, re: -0.5 },
    product: () => 1
  }
];

/** How the three quality factors hang together (Small 1972). */
export const Q_SUM = '1/Qts = 1/Qms + 1/Qes';
