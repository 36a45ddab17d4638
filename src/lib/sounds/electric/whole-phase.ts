import type { Span } from '../blocks/span.js';
import type { CourseSteps } from './course-steps.js';

/**
 * The phase, in periods at each step, of a tone that is `perTurn` periods for each turn and `perSecond` for each second of
 * the course's clock, made to fit a loop: in a loop it is stretched by a hair to a whole number of periods; on the way to a
 * loop it moves, over the second half, by at most half a period, so that it comes to the loop's beginning at a whole one.
 */
export function wholePhase(
  { count, turns, seconds }: CourseSteps,
  { cyclic }: Pick<Span, 'cyclic'>,
  perTurn: number,
  perSecond: number
): Float64Array {
  const phase = new Float64Array(count);
  for (let k = 0; k < count; k++) phase[k] = perTurn * turns[k] + perSecond * seconds[k];
  const first = phase[0];
  const last = phase[count - 1];
  if (cyclic) {
    const stretch = last > first ? Math.round(last - first) / (last - first) : 0;
    for (let k = 0; k < count; k++) phase[k] = (phase[k] - first) * stretch;
    return phase;
  }
  const off = Math.round(last) - last;
  for (let k = Math.floor(count / 2); k < count; k++) {
    const share = Math.max(0, (2 * k) / (count - 1) - 1);
    phase[k] += off * share * share * (3 - 2 * share);
  }
  return phase;
}
