import { expect, test } from 'vitest';
import { courseThrough } from '../../../../src/lib/sounds/motion/course.js';
import { curveAlong, highestOf } from '../../../../src/lib/sounds/diesel/curve-along.js';

const motions = [0, 1, 2, 3].map((i) => ({
  turns: i,
  speed: 10 + i,
  effort: i / 4,
  spool: 0.5,
  seconds: i / 1000
}));
const course = courseThrough(motions, 64000);

test('it follows speed, effort and spool sample by sample', () => {
  const curve = curveAlong(
    course,
    { length: 192, sampleRate: 64000 },
    ({ speed, effort, spool }) => speed + 100 * effort + 1000 * spool
  );
  expect(curve).toHaveLength(192);
  for (const i of [0, 32, 64, 100, 191]) expect(curve[i]).toBeCloseTo(510 + i / 64 + (100 * i) / 256, 3);
});

test('between its steps it is linear', () => {
  const curve = curveAlong(course, { length: 64, sampleRate: 64000 }, ({ speed }) => (speed - 10) ** 2);
  expect(curve[16]).toBeCloseTo((curve[0] + curve[32]) / 2, 6);
});

test('the highest of a curve is found, also of a long one', () => {
  expect(highestOf(course.speed)).toBe(13);
  expect(highestOf(new Float32Array(500000).fill(0.25, 400000))).toBe(0.25);
});
