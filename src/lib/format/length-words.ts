import type { Metres } from '../units.js';
import { INCH } from './length-units.js';
import { millimetres } from './millimetres.js';

/** A length with its unit as it is written on a drawing: 102 mm, or 4 1/64 in. */
export function lengthWords(length: Metres, inches: boolean): string {
  return `${lengthFigure(length, inches)} ${inches ? 'in' : 'mm'}`;
}

/**
 * The figure alone. Millimetres to a tenth, without idle noughts. Inches as one types them: a decimal where two places, or
 * three, tell the whole of it (1.5, 1.55), otherwise the nearest 1/64 in lowest terms (1 9/16).
 */
export function lengthFigure(length: Metres, inches: boolean): string {
  if (!inches) return millimetres(length);
  const size = Math.abs(length / INCH);
  const sixtyFourths = Math.round(size * 64);
  const isWhole = (parts: number): boolean =>
    Math.abs(Math.round(size * parts) / parts - size) * INCH < EXACT;
  const decimals = [100, 1000].find((parts) => isWhole(parts) && (parts === 100 || !isWhole(64)));
  const figure = decimals ? String(Math.round(size * decimals) / decimals) : fraction(sixtyFourths);
  return (length < 0 && figure !== '0' ? '−' : '') + figure;
}

/** What was typed in inches differs from its figure by rounding alone; 200 mm are 0.4 µm from 7.874 in, and no decimal. */
const EXACT: Metres = 1e-9;

/** So many 1/64 in lowest terms, with the whole inches before it. */
function fraction(sixtyFourths: number): string {
  const whole = Math.floor(sixtyFourths / 64);
  let [top, bottom] = [sixtyFourths % 64, 64];
  if (top === 0) return String(whole);
  while (top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  return `${whole === 0 ? '' : `${whole} `}${top}/${bottom}`;
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
