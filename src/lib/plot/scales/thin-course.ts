import type { Decibels, Seconds } from '../../units.js';

/** Level over time as it is drawn; point i of n stands for the time (i + ½)·duration/n. */
export interface DrawnCourse {
  duration: Seconds;
  rmsDb: Float64Array;
  peakDb: Float64Array;
}

/**
 * The same course with at most `most` points, so that a narrow picture shows a line and no thicket: neighbours share a
 * point, the average as mean of their powers, the peak as the largest. Points stay evenly spread; where the numbers do
 * not divide, a point takes part of its neighbours' power by its share of their time.
 */
export function thinCourse(course: DrawnCourse, most: number): DrawnCourse {
  const count = course.rmsDb.length;
  const fewer = Math.max(1, Math.floor(most));
  if (count <= fewer) return course;
  const rmsDb = new Float64Array(fewer);
  const peakDb = new Float64Array(fewer);
  const share = count / fewer;
  for (let j = 0; j < fewer; j++) {
    const from = j * share;
    const to = (j + 1) * share;
    let power = 0;
    let peak: Decibels = -Infinity;
    for (let i = Math.floor(from + 1e-9); i < Math.min(count, to - 1e-9); i++) {
      const part = Math.min(to, i + 1) - Math.max(from, i);
      power += part * 10 ** (course.rmsDb[i] / 10);
      peak = Math.max(peak, course.peakDb[i]);
    }
    rmsDb[j] = 10 * Math.log10(power / share);
    peakDb[j] = peak;
  }
  return { duration: course.duration, rmsDb, peakDb };
}
