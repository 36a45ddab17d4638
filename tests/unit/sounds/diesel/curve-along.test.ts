import { expect, test } from 'vitest';
import { SpareArrays } from '../../../../src/lib/sounds/blocks/spare-arrays.js';
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
const span = (length: number) => ({ length, sampleRate: 64000, spare: new SpareArrays(length) });

test('it follows speed, effort and spool sample by sample', () => {
  const curve = curveAlong(
    course,
    span(192),
    ({ speed, effort, spool }) => speed + 100 * effort + 1000 * spool
  );
  expect(curve).toHaveLength(192);
  for (const i of [0, 32, 64, 100, 191]) expect(curve[i]).toBeCloseTo(510 + i / 64 + (100 * i) / 256, 3);
});

test('between its steps it is linear', () => {
  const curve = curveAlong(course, span(64), ({ speed }) => (speed - 10) ** 2);
  expect(curve[16]).toBeCloseTo((curve[0] + curve[32]) / 2, 6);
});

test('the highest of a curve is found, also of a long one', () => {
  expect(highestOf(course.speed)).toBe(13);
  expect(highestOf(new Float32Array(500000).fill(0.25, 400000))).toBe(0.25);
});

test('along a steady course it is one number, the same as worked out step by step', () => {
  const steady = courseThrough(
    motions.map((motion) => ({ ...motion, speed: 11.3, effort: 0.3, spool: 0.7 })),
    64000
  );
  expect([course.steady, steady.steady]).toEqual([false, true]);
  const value = ({ speed, effort, spool }: { speed: number; effort: number; spool: number }) =>
    0.0011 * speed * (0.4 + effort) + spool ** 1.3;
  const slowly = curveAlong({ ...steady, steady: false }, span(192), value);
  expect(curveAlong(steady, span(192), value)).toEqual(slowly);
});
