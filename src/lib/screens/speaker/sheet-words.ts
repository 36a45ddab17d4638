import {
  sheetTolerance,
  isSensitivity,
  type Contradiction,
  type SheetReading
} from '../../acoustics/speaker/read-sheet.js';
import { SHEET_NAMES, type SheetFigure } from '../../acoustics/speaker/sheet-relations.js';
import { inDigits } from '../../format/in-digits.js';
import { inItsUnit, SHEET_FIELDS, type SensitivityAt, type SheetKey } from './sheet-fields.js';

/** *one*, *one and another*, *one, another and a third*. */
export function listed(names: readonly string[], and = 'and'): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} ${and} ${names.at(-1)}`;
}

export function keyOf(figure: SheetFigure): SheetKey {
  return figure === 'sensitivityPerWatt' ? 'sensitivity' : figure;
}

/** A figure with its unit, in three digits; a sensitivity in tenths of a decibel, as it was asked for. */
export function figureWords(figure: SheetFigure, value: number, at: SensitivityAt, distance: number): string {
  const key = keyOf(figure);
  const shown = inItsUnit(key, { [figure]: value }, at, distance)!;
  const text = key === 'sensitivity' ? shown.toFixed(1) : inDigits(shown, 3);
  const { unit } = SHEET_FIELDS[key];
  return unit === '' ? text : `${text} ${unit}`;
}

function names(figures: readonly SheetFigure[], coneDrawn: boolean): string {
  return listed(
    figures.map((figure) => (figure === 'sd' && coneDrawn ? 'the cone as it is drawn' : SHEET_NAMES[figure]))
  );
}

function begun(words: string): string {
  return words[0].toUpperCase() + words.slice(1);
}

/**
 * Where a sheet contradicts itself: what it says, what other figures make of it, how far apart that is and what would pass. `coneDrawn`: the cone
 * area is that of the drawing.
 */
export function contradictionWords(
  { figure, given, derived, from }: Contradiction,
  at: SensitivityAt,
  distance: number,
  coneDrawn: boolean
): string {
  const name = begun(figure === 'sd' && coneDrawn ? 'the cone as it is drawn' : SHEET_NAMES[figure]);
  const says = figureWords(figure, given, at, distance);
  if (derived === null)
    return `${name} ${says} does not go with ${names(from, coneDrawn)}: no speaker has them together. It is left out.`;
  const ratio = Math.max(given / derived, derived / given);
  const apart = isSensitivity(figure)
    ? `${(20 * Math.log10(ratio)).toFixed(1)} dB`
    : `${Math.round((ratio - 1) * 100)} %`;
  const pass = isSensitivity(figure)
    ? `${Math.round(20 * Math.log10(sheetTolerance(figure)))} dB`
    : `${Math.round((sheetTolerance(figure) - 1) * 100)} %`;
  return `${name}: the sheet says ${says}. ${begun(names(from, coneDrawn))} ${from.length > 1 ? 'make' : 'makes'} it ${figureWords(figure, derived, at, distance)}. That is ${apart} apart; up to ${pass} would pass as rounding.`;
}

/** What a sheet lacks; null where it says all. */
export function lackingWords({ lacking, wanted }: Pick<SheetReading, 'lacking' | 'wanted'>): string | null {
  if (lacking === 0) return null;
  const among = [...new Set(wanted.map((figure) => SHEET_NAMES[figure]))];
  const count = ['one', 'two', 'three', 'four', 'five', 'six'][lacking - 1];
  return lacking === 1
    ? `One more figure is needed: ${listed(among, 'or')}.`
    : `${begun(count)} more figures are needed, of these: ${listed(among, 'and')}.`;
}
