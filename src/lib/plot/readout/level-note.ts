import type { Seconds } from '../../units.js';
import { levelText } from '../../format/level-text.js';
import type { Note } from './note-box.js';
import type { DrawnCourse } from '../scales/thin-course.js';
import { timeText } from '../axes/time-ticks.js';

/** Number of the point that stands for a time; −1 where there are no points. */
export function pointAt({ duration, rmsDb }: DrawnCourse, time: Seconds): number {
  return Math.min(rmsDb.length - 1, Math.max(0, Math.floor((time / duration) * rmsDb.length)));
}

/** What the readout says of a time: both levels, and how far the peaks stand above the average (the crest factor). */
export function levelNote(course: DrawnCourse, at: Seconds): Note {
  const i = pointAt(course, at);
  const average = i < 0 ? NaN : course.rmsDb[i];
  const peak = i < 0 ? NaN : course.peakDb[i];
  // As the figures above it are written: a reader may well subtract them.
  const crest = Math.round(peak) - Math.round(average);
  return {
    title: timeText(at, course.duration),
    rows: [
      { look: 'filled', name: 'average', value: levelText(average), levelDb: average },
      { look: 'outline', name: 'peaks', value: levelText(peak), levelDb: peak }
    ],
    end: Number.isFinite(crest) ? `peaks ${crest} dB above it` : null
  };
}
