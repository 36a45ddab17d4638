import type { Metres, SquareMetres } from '../units.js';
import { lengthFigure, lengthFrom } from './length-words.js';
import { INCH } from './length-units.js';
import { numberFrom } from './number-from.js';

/** What a knob turns: a length where nothing is told, a narrow gap, a share of a whole, a number of things, an area. */
export type Quantity = 'gap' | 'share' | 'count' | 'area' | undefined;

const CM2: SquareMetres = 1e-4;
const INCH2: SquareMetres = INCH ** 2;

/** The figure as it is written in a field. */
export function quantityFigure(value: number, quantity: Quantity, inches: boolean): string {
  switch (quantity) {
    case 'gap':
      return gapFigure(value, inches);
    case 'share':
      return String(Number((100 * value).toPrecision(3)));
    case 'count':
      return String(Math.round(value));
    case 'area':
      return String(Number((value / (inches ? INCH2 : CM2)).toPrecision(3)));
    default:
      return lengthFigure(value, inches);
  }
}

/** A length, one of less than 1 mm to a hundredth; in inches one of less than 1/64 as two digits: 0.0039. */
function gapFigure(gap: Metres, inches: boolean): string {
  if (inches)
    return gap > 0 && gap < INCH / 64 ? String(Number((gap / INCH).toPrecision(2))) : lengthFigure(gap, true);
  return gap < 0.00095 ? String(Math.round(gap * 1e5) / 100) : lengthFigure(gap, false);
}

export function quantityUnit(quantity: Quantity, inches: boolean): string {
  switch (quantity) {
    case 'share':
      return '%';
    case 'count':
      return '';
    case 'area':
      return inches ? 'in²' : 'cm²';
    default:
      return inches ? 'in' : 'mm';
  }
}

/** With its unit. */
export function quantityWords(value: number, quantity: Quantity, inches: boolean): string {
  return `${quantityFigure(value, quantity, inches)} ${quantityUnit(quantity, inches)}`.trim();
}

/** What was typed, in SI units; NaN where it is none. */
export function quantityFrom(text: string, quantity: Quantity, inches: boolean): Metres | number {
  switch (quantity) {
    case 'share':
      // Of 35 / 100 a file would say 0.35000000000000003.
      return Number((numberFrom(text) / 100).toPrecision(12));
    case 'count':
      return numberFrom(text);
    case 'area':
      return Number((numberFrom(text) * (inches ? INCH2 : CM2)).toPrecision(12));
    default:
      return lengthFrom(text, inches);
  }
}

/** What is asked for where something else was typed. */
export function quantityAsked(quantity: Quantity): string {
  switch (quantity) {
    case 'share':
      return 'a number of per cent, as 30';
    case 'count':
      return 'a number, as 20';
    case 'area':
      return 'an area as a number, as 3.5';
    default:
      return 'a length, as 102, 1 9/16 in or 4.5 cm';
  }
}
