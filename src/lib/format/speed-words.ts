import type { MetresPerSecond } from '../units.js';

/** A train's speed: km/h, or mph where lengths are in inches. */
export function speedWords(speed: MetresPerSecond, inches: boolean): string {
  return inches ? `${Math.round(speed / 0.44704)} mph` : `${Math.round(speed * 3.6)} km/h`;
}
