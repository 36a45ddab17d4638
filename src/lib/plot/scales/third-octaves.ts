import type { Hertz } from '../../units.js';

/** Nominal third-octave mid-bands of one decade (IEC 61260-1:2014, annex E; the R10 series of ISO 266). */
const decade = [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8];

/** The nominal third-octave frequencies from `from` to `to`, both included. */
export function thirdOctaves(from: Hertz, to: Hertz): Hertz[] {
  const found: Hertz[] = [];
  for (let power = Math.floor(Math.log10(from)); 10 ** power <= to; power++)
    for (const step of decade) {
      const frequency = Number((step * 10 ** power).toPrecision(3));
      if (frequency >= from && frequency <= to) found.push(frequency);
    }
  return found;
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
