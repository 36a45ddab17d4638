import type { Seconds } from '../units.js';

/** A duration as a clock shows it: 0:07, 12:30. */
export function clockTime(duration: Seconds): string {
  const whole = Math.round(duration);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}
