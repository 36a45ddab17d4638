import { expect, test } from 'vitest';
import { along, courseThrough, pulsesOf } from '../../../../src/lib/sounds/motion/course.js';
import { settledAt, ticked, type Motion } from '../../../../src/lib/sounds/motion/motion.js';
import { close } from '../../../helpers/close.js';

const RATE = 8000;

function motions(count: number, speedAt: (tick: number) => number): Motion[] {
  let turns = 0;
  return Array.from({ length: count }, (_, i) => {
    const speed = speedAt(i);
    const motion = { turns, speed, effort: i / count, load: i / count, spool: 0, seconds: i / 1000 };
    turns += ((speed + speedAt(i + 1)) / 2) * 0.001;
    return motion;
  });
}

test('a steady course has evenly spaced pulses, counted from turns = 0', () => {
  const pulses = pulsesOf(
    courseThrough(
      motions(1001, () => 5),
      RATE
    ),
    4
  );
  expect(pulses.map(({ number }) => number)).toEqual(Array.from({ length: 20 }, (_, i) => i));
  for (const { at, number } of pulses)
    close(at, (number * RATE) / 20, { abs: 1e-6, because: '20 pulses a second' });
});

test('a rising course has them where the turns say: n = a·t²/2', () => {
  const pulses = pulsesOf(
    courseThrough(
      motions(2001, (tick) => tick / 100),
      RATE
    ),
    1
  );
  for (const { at, number } of pulses.slice(1))
    close(at / RATE, Math.sqrt((2 * number) / 10), {
      abs: 2e-4,
      because: 'linear within a tick of 1 ms, where the speed changes by a thousandth'
    });
});

test('the loop’s end is not its beginning once more, and rounding does not lose a pulse', () => {
  const start = settledAt({ speed: 400 / 60, effort: 0.1 });
  const dynamics = { range: 1, rise: 1, fall: 1, answer: 1, loading: Infinity, spoolUp: 1, spoolDown: 1 };
  const all = [start];
  for (let i = 0; i < 300; i++) all.push(ticked(all[i], start, dynamics));
  const pulses = pulsesOf(courseThrough(all, RATE), 6);
  expect(pulses[0].at).toBe(0);
  expect(pulses.map(({ number }) => number)).toEqual(Array.from({ length: 12 }, (_, i) => i));
});

test('a machine that stands has no pulses', () => {
  expect(
    pulsesOf(
      courseThrough(
        motions(500, () => 0),
        RATE
      ),
      4
    )
  ).toEqual([]);
});

test('curves are read between their points and stay as they are beyond the ends', () => {
  const course = courseThrough(
    motions(11, () => 1),
    RATE
  );
  close(along(course, course.effort, 20), 2.5 / 11, { abs: 1e-6, because: 'single precision' });
  expect(along(course, course.effort, -50)).toBe(0);
  expect(along(course, course.effort, 1e6)).toBe(course.effort[10]);
});
