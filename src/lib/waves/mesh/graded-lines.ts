import type { Metres } from '../../units.js';

/** Share of a side over which the lines crowd together towards a free edge. */
const ZONE = 0.4;
/** Distance from the free edge ∝ (number of the line)^GRADE there: the jump in pressure falls like a square root. */
const GRADE = 1.7;

/**
 * Positions of grid lines from 0 to `length`, both included, never further apart than `spacing`. With a free edge at
 * `length` the lines crowd towards it: their distance from it grows like n^1.7 over 0.4 of the length and evenly
 * beyond (a uniform mesh is ten times less accurate: the pressure jump falls like the square root of the distance).
 *
 * @param length above 0
 * @param spacing above 0
 */
export function gradedLines(length: Metres, spacing: Metres, free: boolean): Float64Array {
  const zone = free ? ZONE * length : 0;
  const inZone = (zone * GRADE) / spacing;
  const total = inZone + (length - zone) / spacing;
  const n = Math.max(1, Math.ceil(total - 1e-9));
  const lines = new Float64Array(n + 1);
  for (let i = 1; i <= n; i++) {
    const fromEdge = ((n - i) * total) / n;
    const distance =
      fromEdge < inZone ? zone * (fromEdge / inZone) ** GRADE : zone + (fromEdge - inZone) * spacing;
    lines[i] = length - distance;
  }
  lines[n] = length;
  return lines;
}
