import { type Span, loopSpan } from '../../../../src/lib/sounds/blocks/span.js';
import { type Course, courseThrough } from '../../../../src/lib/sounds/motion/course.js';

/** A loop of so many turns at a steady speed, with the course through it. */
export function steady(
  {
    speed,
    effort = 0.5,
    spool = effort,
    turns
  }: { speed: number; effort?: number; spool?: number; turns: number },
  sampleRate: number,
  seed = 1
): { course: Course; span: Span } {
  const length = Math.round((turns / speed) * sampleRate);
  const ticks = Math.round((turns / speed) * 1000);
  const motions = Array.from({ length: ticks + 1 }, (_, i) => ({
    turns: (turns * i) / ticks,
    speed,
    effort,
    spool,
    seconds: (length / sampleRate) * (i / ticks)
  }));
  return {
    course: { ...courseThrough(motions, sampleRate), samplesPerTick: length / ticks },
    span: loopSpan(length, sampleRate, seed)
  };
}

/** Amplitude of a loop's line of so many periods in it. */
export function lineOf(loop: Float32Array, periods: number): number {
  let re = 0;
  let im = 0;
  loop.forEach((x, i) => {
    const angle = (2 * Math.PI * periods * i) / loop.length;
    re += x * Math.cos(angle);
    im += x * Math.sin(angle);
  });
  return (2 * Math.hypot(re, im)) / loop.length;
}
