import { describe, expect, it } from 'vitest';
import { levelNote, pointAt } from '../../../../src/lib/plot/readout/level-note.js';
import { noteText } from '../../../../src/lib/plot/readout/note-text.js';
import { thinCourse } from '../../../../src/lib/plot/scales/thin-course.js';
import { close } from '../../../helpers/close.js';
import { random } from '../random.js';

const power = (levelDb: Float64Array) =>
  levelDb.reduce((sum, each) => sum + 10 ** (each / 10), 0) / levelDb.length;

describe('thinCourse', () => {
  const chance = random(4);
  const rmsDb = Float64Array.from({ length: 317 }, () => -40 * chance());
  const course = { duration: 3, rmsDb, peakDb: rmsDb.map((level) => level + 3 + 9 * chance()) };

  it('keeps the power of the whole and its largest peak, whatever the numbers', () => {
    for (const most of [1, 2, 50, 100.7, 200, 316]) {
      const thin = thinCourse(course, most);
      expect(thin.rmsDb).toHaveLength(Math.floor(most));
      expect(thin.duration).toBe(3);
      close(power(thin.rmsDb), power(rmsDb), { rel: 1e-9, because: 'every point given away whole' });
      expect(Math.max(...thin.peakDb)).toBe(Math.max(...course.peakDb));
    }
  });
  it('keeps a peak at its time and above its average', () => {
    const click = new Float64Array(300).fill(-50);
    click[200] = -3;
    const thin = thinCourse({ duration: 3, rmsDb: new Float64Array(300).fill(-60), peakDb: click }, 30);
    expect(thin.peakDb.indexOf(-3)).toBe(20);
    thin.rmsDb.forEach((level) => close(level, -60, { abs: 1e-9, because: 'all the same' }));
  });
  it('leaves a course alone that is short enough, and silence silent', () => {
    expect(thinCourse(course, 317)).toBe(course);
    const silent = new Float64Array(10).fill(-Infinity);
    expect([...thinCourse({ duration: 1, rmsDb: silent, peakDb: silent }, 3).rmsDb]).toEqual(
      Array(3).fill(-Infinity)
    );
  });
});

describe('levelNote', () => {
  const course = {
    duration: 2,
    rmsDb: Float64Array.of(-20, -30, -Infinity, -12.4),
    peakDb: Float64Array.of(-8, -19, -Infinity, 0)
  };
  it('reads the point that holds the time; the ends hold', () => {
    expect([-1, 0, 0.49, 0.5, 1.99, 2, 9].map((time) => pointAt(course, time))).toEqual([
      0, 0, 0, 1, 3, 3, 3
    ]);
    expect(noteText(levelNote(course, 0.6))).toBe(
      '0.60 s: average −30 dB; peaks −19 dB; peaks 11 dB above it'
    );
    expect(noteText(levelNote(course, 2))).toBe('2.00 s: average −12 dB; peaks 0 dB; peaks 12 dB above it');
  });
  it('says that it is silent, and that there is no figure', () => {
    expect(noteText(levelNote(course, 1.2))).toBe('1.20 s: average silent; peaks silent');
    const none = { duration: 2, rmsDb: new Float64Array(0), peakDb: new Float64Array(0) };
    expect(pointAt(none, 1)).toBe(-1);
    expect(noteText(levelNote(none, 1))).toBe('1.00 s: average no figure; peaks no figure');
  });
});
