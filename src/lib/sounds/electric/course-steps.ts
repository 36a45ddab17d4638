import type { Span } from '../blocks/span.js';
import { along, type Course } from '../motion/course.js';

/** Samples from one step to the next (1.3 ms at 48 kHz). */
export const STEP = 64;

/** A course at samples 0, 64, 128 … and at the end of a span: close enough for all that is not the sound itself. */
export interface CourseSteps {
  count: number;
  turns: Float64Array;
  seconds: Float64Array;
  speed: Float32Array;
  effort: Float32Array;
  spool: Float32Array;
  /** How fast the speed changes, in turns/s², over some hundredths of a second. */
  gain: Float32Array;
}

/** The steps of a course along a span. */
export function courseSteps(course: Course, { length }: Pick<Span, 'length'>): CourseSteps {
  const count = Math.ceil(length / STEP) + 1;
  const sample = (k: number) => Math.min(length, k * STEP);
  const gap = 30 * course.samplesPerTick;
  const lasts = 0.06;
  return {
    count,
    turns: Float64Array.from({ length: count }, (_, k) => along(course, course.turns, sample(k))),
    seconds: Float64Array.from({ length: count }, (_, k) => along(course, course.seconds, sample(k))),
    speed: Float32Array.from({ length: count }, (_, k) => along(course, course.speed, sample(k))),
    effort: Float32Array.from({ length: count }, (_, k) => along(course, course.effort, sample(k))),
    spool: Float32Array.from({ length: count }, (_, k) => along(course, course.spool, sample(k))),
    gain: Float32Array.from(
      { length: count },
      (_, k) =>
        (along(course, course.speed, sample(k) + gap) - along(course, course.speed, sample(k) - gap)) / lasts
    )
  };
}

/** Multiplies a signal by a curve given at the steps, straight between, and adds it to a sum. */
export function addScaled(sum: Float32Array, signal: Float32Array, curve: Float32Array): void {
  const { length } = signal;
  for (let from = 0, k = 0; from < length; from += STEP, k++) {
    const to = Math.min(length, from + STEP);
    const rise = (curve[k + 1] - curve[k]) / (to - from);
    for (let i = from; i < to; i++) sum[i] += (curve[k] + rise * (i - from)) * signal[i];
  }
}
