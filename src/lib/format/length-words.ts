import type { Metres } from '../units.js';
import { INCH } from './length-units.js';
import { millimetres } from './millimetres.js';

/** A length with its unit as it is written on a drawing: 102 mm, or 4.02 in. */
export function lengthWords(length: Metres, inches: boolean): string {
  return `${lengthFigure(length, inches)} ${inches ? 'in' : 'mm'}`;
}

/** The figure alone: millimetres to a tenth, inches to a hundredth, without idle noughts. */
export function lengthFigure(length: Metres, inches: boolean): string {
  if (!inches) return millimetres(length);
  const rounded = Math.round((length / INCH) * 100) / 100;
  return (rounded < 0 ? '−' : '') + String(Math.abs(rounded));
}

const UNITS: Record<string, Metres> = { mm: 0.001, cm: 0.01, m: 1, in: INCH, '"': INCH, '″': INCH };

/**
 * A length as a person types it: a number with a point or a comma, a fraction (9/16), a whole number with a fraction
 * (1 9/16), with or without a unit; without one it is in inches or millimetres as the screen is. NaN where it is none.
 */
export function lengthFrom(text: string, inches: boolean): Metres {
  const match =
    /^([-−+])?(?:(\d+(?:[.,]\d*)?|[.,]\d+)(?:[\s-]+(\d+)\/(\d+))?|(\d+)\/(\d+))\s*(mm|cm|m|in|"|″)?$/i.exec(
      text.trim()
    );
  if (!match) return NaN;
  const [, sign, whole, above, below, top, bottom, unit] = match;
  const number =
    (whole === undefined ? 0 : Number(whole.replace(',', '.'))) +
    (above === undefined ? 0 : Number(above) / Number(below)) +
    (top === undefined ? 0 : Number(top) / Number(bottom));
  const size = unit === undefined ? (inches ? INCH : UNITS.mm) : UNITS[unit.toLowerCase()];
  return (sign === '-' || sign === '−' ? -1 : 1) * number * size;
}
