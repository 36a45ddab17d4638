import { slowCurve } from '../blocks/slow-curve.js';
import type { Span } from '../blocks/span.js';
import { along, type Course } from '../motion/course.js';

/** A slow curve along a course, sample by sample: `value` of the motion there. */
export function curveAlong(
  course: Course,
  span: Pick<Span, 'length' | 'sampleRate' | 'spare'>,
  value: (motion: { speed: number; effort: number; spool: number }) => number
): Float32Array {
  if (course.steady) {
    const motion = { speed: course.speed[0], effort: course.effort[0], spool: course.spool[0] };
    return span.spare.take().fill(value(motion));
  }
  return slowCurve(span, (sample) =>
    value({
      speed: along(course, course.speed, sample),
      effort: along(course, course.effort, sample),
      spool: along(course, course.spool, sample)
    })
  );
}

/** The highest that a curve of a course comes to; curves are 0 or more. */
export function highestOf(curve: Float32Array): number {
  return curve.reduce((most, x) => Math.max(most, x), 0);
}
