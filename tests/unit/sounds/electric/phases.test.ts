import { describe, expect, test } from 'vitest';
import { addTone } from '../../../../src/lib/sounds/electric/add-tone.js';
import { addScaled, courseSteps, STEP } from '../../../../src/lib/sounds/electric/course-steps.js';
import {
  axleTeeth,
  humRate,
  periodsPerTurn,
  wheelRate
} from '../../../../src/lib/sounds/electric/electric.js';
import { INVERTER_STEPS, stepShare } from '../../../../src/lib/sounds/electric/inverter-steps.js';
import { wholePhase } from '../../../../src/lib/sounds/electric/whole-phase.js';
import { courseThrough } from '../../../../src/lib/sounds/motion/course.js';
import { close } from '../../../helpers/close.js';

const RATE = 8000;
const LENGTH = 8000;
/** A second in which the speed rises from 2 to 4 turns a second. */
const course = courseThrough(
  Array.from({ length: 1001 }, (_, tick) => {
    const t = tick / 1000;
    return { turns: 2 * t + t * t, speed: 2 + 2 * t, effort: 0.5, spool: 0.2, seconds: 7 + t };
  }),
  RATE
);
const steps = courseSteps(course, { length: LENGTH });

test('steps are the course at every 64th sample and at the end', () => {
  expect(steps.count).toBe(LENGTH / STEP + 1);
  close(steps.turns[50], 2 * 0.4 + 0.16, { abs: 1e-6, because: 'between ticks the course is straight' });
  close(steps.turns[steps.count - 1], 3, { abs: 1e-12, because: 'the end' });
  close(steps.gain[60], 2, { abs: 1e-3, because: 'single precision' });
});

describe('a whole phase', () => {
  test('in a loop begins at nothing and ends at a whole number', () => {
    const phase = wholePhase(steps, { cyclic: true }, 17.3, 0.21);
    expect(phase[0]).toBe(0);
    close(phase[steps.count - 1], 52, { abs: 1e-9, because: '17.3·3 + 0.21 = 52.11' });
  });

  test('leading to a loop is true in its first half and ends at a whole number', () => {
    const phase = wholePhase(steps, { cyclic: false }, 17.3, 0.21);
    close(phase[30], 17.3 * steps.turns[30] + 0.21 * steps.seconds[30], {
      abs: 1e-9,
      because: 'the same sum'
    });
    const end = phase[steps.count - 1];
    close(end, Math.round(end), { abs: 1e-9, because: 'whole' });
    close(end, 17.3 * 3 + 0.21 * 8, { abs: 0.5, because: 'half a period at most' });
  });

  test('of a tone slower than half a period a loop does not move', () => {
    expect([...wholePhase(steps, { cyclic: true }, 0.1, 0)].every((phase) => phase === 0)).toBe(true);
  });
});

test('a tone is its sine, and is left out above 0.45 of the sample rate', () => {
  const phase = Float64Array.from({ length: steps.count }, (_, k) => 0.05 * STEP * k);
  const level = new Float32Array(steps.count).fill(0.5);
  const out = new Float32Array(LENGTH);
  addTone(out, phase, level, 0.2);
  for (const i of [0, 63, 64, 1000, 7999])
    close(out[i], 0.5 * Math.sin(2 * Math.PI * (0.05 * i + 0.2)), {
      abs: 1e-5,
      because: 'turned step by step'
    });
  const high = new Float32Array(LENGTH);
  addTone(
    high,
    phase.map((periods) => 9.2 * periods),
    level
  );
  expect(high.every((x) => x === 0)).toBe(true);
});

test('a scaled signal follows its curve', () => {
  const sum = new Float32Array(LENGTH).fill(1);
  addScaled(
    sum,
    new Float32Array(LENGTH).fill(2),
    Float32Array.from({ length: steps.count }, (_, k) => k)
  );
  for (const i of [0, 32, 640, 7999])
    close(sum[i], 1 + (2 * i) / STEP, { rel: 1e-5, because: 'single precision' });
});

test('one way of switching at a time, or two that share, and their squares make 1', () => {
  for (const motor of [0, 3.9, 4, 4.1, 30, 57.95, 90, 149.9, 200]) {
    const squares = INVERTER_STEPS.map((_, step) => stepShare(step, motor) ** 2);
    close(
      squares.reduce((sum, x) => sum + x, 0),
      1,
      { abs: 1e-12, because: 'sine and cosine' }
    );
    expect(squares.filter((x) => x > 1e-12).length).toBeLessThanOrEqual(2);
  }
  expect(stepShare(5, 30)).toBe(1);
});

test('rates follow from the knobs', () => {
  close(wheelRate({ wheelDiameter: 1 / Math.PI }, 12), 12, { rel: 1e-12, because: 'rounding' });
  expect(axleTeeth({ gearRatio: 5 })).toBe(85);
  close(periodsPerTurn({ gearRatio: 5, polePairs: 2 }), 10, { rel: 1e-12, because: 'rounding' });
  expect((['16.7 Hz', '50 Hz', '60 Hz'] as const).map((lineFrequency) => humRate({ lineFrequency }))).toEqual(
    [33.4, 100, 120]
  );
});
