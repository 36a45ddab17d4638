import type { Seconds } from '../../units.js';

export interface TimeTick {
  time: Seconds;
  label: string;
}

/** The smallest of 1, 2, 5 times a power of ten that divides the duration into at most `most` parts. */
export function timeStep(duration: Seconds, most: number): Seconds {
  const least = duration / most;
  const power = 10 ** Math.floor(Math.log10(least));
  const step = [1, 2, 5, 10].find((each) => each * power >= least * (1 - 1e-9)) as number;
  return Number((step * power).toPrecision(1));
}

/** The times 0, step, 2·step … up to the duration. */
export function timesBy(step: Seconds, duration: Seconds): Seconds[] {
  const count = Math.floor(duration / step + 1e-6);
  return Array.from({ length: count + 1 }, (_, i) => Number((i * step).toPrecision(12)));
}

/** Least distance in text heights between the middles of two figures. */
const FIGURE_ROOM = 6;

/** Lines of a time axis from 0 in steps of 1, 2 or 5; the unit is said once: seconds, or milliseconds below half a second. */
export function timeTicks(duration: Seconds, width: number, textSize: number): TimeTick[] {
  const step = timeStep(duration, Math.max(1, Math.floor(width / (FIGURE_ROOM * textSize))));
  const milli = duration < 0.5;
  return timesBy(step, duration).map((time) => ({
    time,
    label: time === 0 ? (milli ? '0 ms' : '0 s') : `${Number((milli ? time * 1000 : time).toPrecision(6))}`
  }));
}

/** A time in words to the digits that matter beside the duration: "1.25 s", "0.034 s". */
export function timeText(time: Seconds, duration: Seconds): string {
  return `${time.toFixed(duration < 0.5 ? 3 : duration < 20 ? 2 : 1)} s`;
}
