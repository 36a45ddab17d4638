import type { Decibels } from '../units.js';

/** A whole number with a true minus sign, or a plus sign above zero. */
export function signed(value: number): string {
  const whole = Math.round(value);
  if (whole === 0) return '0';
  return whole < 0 ? `−${-whole}` : `+${whole}`;
}

/** A level in words: "−5 dB", "silent" for −∞, "no figure" in a gap. */
export function levelText(levelDb: Decibels): string {
  if (Number.isNaN(levelDb)) return 'no figure';
  if (levelDb === -Infinity) return 'silent';
  return `${signed(levelDb)} dB`;
}
