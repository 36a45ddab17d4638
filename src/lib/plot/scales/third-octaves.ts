import { thirdOctaveBands } from '../../numeric/third-octave-bands.js';
import type { Hertz } from '../../units.js';

/** The nominal third-octave frequencies from `from` to `to`, both included. */
export function thirdOctaves(from: Hertz, to: Hertz): Hertz[] {
  return thirdOctaveBands(from, to)
    .map(({ nominal }) => nominal)
    .filter((nominal) => nominal >= from && nominal <= to);
}

/**
 * The stop `steps` third octaves above (below, if negative) a frequency, among the given ascending stops. From between
 * two stops the first step leads to the nearer neighbour on that side; the ends hold.
 */
export function stepAlong(stops: readonly Hertz[], frequency: Hertz, steps: number): Hertz {
  if (stops.length === 0 || steps === 0) return frequency;
  const slack = frequency * 1e-6;
  const next =
    steps > 0
      ? stops.filter((stop) => stop <= frequency + slack).length - 1 + steps
      : stops.filter((stop) => stop < frequency - slack).length + steps;
  return stops[Math.max(0, Math.min(stops.length - 1, next))];
}
