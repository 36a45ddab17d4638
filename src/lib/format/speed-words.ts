import type { MetresPerSecond } from '../units.js';
import { KMH_PER_METRE_PER_SECOND, MILE_PER_HOUR } from './length-units.js';

/** A train's speed: km/h, or mph where lengths are in inches. */
export function speedWords(speed: MetresPerSecond, inches: boolean): string {
  return inches
    ? `${Math.round(speed / MILE_PER_HOUR)} mph`
    : `${Math.round(speed * KMH_PER_METRE_PER_SECOND)} km/h`;
}
