import { along, type Course } from '../motion/course.js';

/** Slow curves are worked out every so many samples, and are linear in between. */
export const STEP = 32;

/** A slow curve along a course, sample by sample: `value` of the motion there. */
export function curveAlong(
  course: Course,
  length: number,
  value: (motion: { speed: number; effort: number; spool: number }) => number
): Float32Array {
  const at = (sample: number) =>
    value({
      speed: along(course, course.speed, sample),
      effort: along(course, course.effort, sample),
      spool: along(course, course.spool, sample)
    });
  const curve = new Float32Array(length);
  let here = at(0);
  for (let from = 0; from < length; from += STEP) {
    const to = Math.min(length, from + STEP);
    const next = at(to);
    const rise = (next - here) / (to - from);
    for (let i = from, level = here; i < to; i++, level += rise) curve[i] = level;
    here = next;
  }
  return curve;
}

/** The highest that a curve of a course comes to; curves are 0 or more. */
export function highestOf(curve: Float32Array): number {
  return curve.reduce((most, x) => Math.max(most, x), 0);
}
