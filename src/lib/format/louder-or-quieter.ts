import type { Decibels } from '../units.js';

/** A level difference as a modeller would say it. */
export function louderOrQuieter(differenceDb: Decibels): string {
  const rounded = Math.round(differenceDb);
  if (rounded === 0) return 'just as loud';
  return rounded > 0 ? `${rounded} dB louder` : `${-rounded} dB quieter`;
}
