import type { Decibels } from '../units.js';

/** A whole number with a true minus sign, or a plus sign above zero. */
export function signed(value: number): string {
  const whole = Math.round(value);
  if (whole === 0) return '0';
  return whole < 0 ? `−${-whole}` : `+${whole}`;
}

/** A whole number with a true minus sign: a level that is not against another one. */
export function whole(value: number): string {
  return signed(value).replace('+', '');
}

/**
 * A level in words: "−5 dB", "silent" for −∞, "no figure" in a gap. With `zeroDb`, which tells in dB re 20 µPa what 0 dB is, it is
 * written so: "62 dB".
 */
export function levelText(levelDb: Decibels, zeroDb?: Decibels): string {
  if (Number.isNaN(levelDb)) return 'no figure';
  if (levelDb === -Infinity) return 'silent';
  return `${zeroDb === undefined ? signed(levelDb) : whole(levelDb + zeroDb)} dB`;
}
