import { REFERENCE_PRESSURE } from '../../acoustics/speaker/sensitivity.js';
import { SHEET_NAMES, type Sheet } from '../../acoustics/speaker/sheet-relations.js';

/** The figures as they are typed; how the sensitivity was measured stands beside it. */
export type SheetKey =
  | 'fs'
  | 're'
  | 'qms'
  | 'qes'
  | 'qts'
  | 'vas'
  | 'mms'
  | 'cms'
  | 'bl'
  | 'sd'
  | 'rms'
  | 'sensitivity';

export interface SheetField {
  /** In plain words, and as the trade writes it. */
  name: string;
  symbol: string;
  unit: string;
  /** What one in SI is in that unit. */
  factor: number;
  /** It may be 0 and below. */
  any?: boolean;
}

const field = (key: SheetKey, symbol: string, unit: string, factor: number): SheetField => ({
  ...{ name: SHEET_NAMES[key], symbol, unit, factor }
});

/** In the order in which makers write them. */
export const SHEET_FIELDS: Readonly<Record<SheetKey, SheetField>> = {
  fs: field('fs', 'fs, F0', 'Hz', 1),
  re: field('re', 'Re', 'Ω', 1),
  qms: field('qms', 'Qms', '', 1),
  qes: field('qes', 'Qes', '', 1),
  qts: field('qts', 'Qts', '', 1),
  vas: field('vas', 'Vas', 'cm³', 1e6),
  mms: field('mms', 'Mms', 'g', 1e3),
  cms: field('cms', 'Cms', 'mm/N', 1e3),
  bl: field('bl', 'Bl', 'T·m', 1),
  sd: field('sd', 'Sd', 'cm²', 1e4),
  rms: field('rms', 'Rms', 'kg/s', 1),
  sensitivity: { ...field('sensitivity', 'SPL', 'dB', 1), any: true }
};

export const SHEET_KEYS = Object.keys(SHEET_FIELDS) as SheetKey[];

/** How the maker drove the speaker for its sensitivity: by volts, or by one watt into its own coil. */
export interface SensitivityAt {
  words: string;
  volts: number | null;
}

export const SENSITIVITY_AT: readonly SensitivityAt[] = [
  { words: '1 W into 8 Ω (2.83 V)', volts: Math.sqrt(8) },
  { words: '1 W into 4 Ω (2 V)', volts: 2 },
  { words: '0.1 W into 8 Ω (0.89 V)', volts: Math.sqrt(0.8) },
  { words: '1 W into its coil', volts: null },
  { words: '1 V', volts: 1 }
];

/** From how far makers measure, in metres. */
export const DISTANCES = [1, 0.5, 0.1] as const;

/** A typed figure in SI. Sound pressure falls as the distance grows. */
export function inSi(key: SheetKey, typed: number, { volts }: SensitivityAt, distance: number): Sheet {
  if (key !== 'sensitivity') return { [key]: typed / SHEET_FIELDS[key].factor };
  const pascals = REFERENCE_PRESSURE * 10 ** (typed / 20) * distance;
  return volts === null ? { sensitivityPerWatt: pascals } : { sensitivity: pascals / volts };
}

/** A figure in SI as it is written in the unit of its field, the sensitivity as it was asked for. */
export function inItsUnit(
  key: SheetKey,
  known: Sheet,
  { volts }: SensitivityAt,
  distance: number
): number | null {
  const value = key === 'sensitivity' && volts === null ? known.sensitivityPerWatt : known[key];
  if (value === undefined) return null;
  if (key !== 'sensitivity') return value * SHEET_FIELDS[key].factor;
  return 20 * Math.log10((value * (volts ?? 1)) / distance / REFERENCE_PRESSURE);
}
