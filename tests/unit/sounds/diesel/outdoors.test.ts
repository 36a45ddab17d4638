import { expect, test } from 'vitest';
import { SpareArrays } from '../../../../src/lib/sounds/blocks/spare-arrays.js';
import { loopSpan } from '../../../../src/lib/sounds/blocks/span.js';
import { outdoors } from '../../../../src/lib/sounds/diesel/outdoors.js';

const RATE = 48000;

test('a click is followed by five reflections, the last after 57 ms', () => {
  const click = new Float32Array(4800);
  click[100] = 1;
  const heard = outdoors(click, { ...loopSpan(4800, RATE, 1), cyclic: false });
  const around = (seconds: number) =>
    heard
      .subarray(90 + Math.round(seconds * RATE), 190 + Math.round(seconds * RATE))
      .reduce((a, b) => a + b, 0);
  for (const [seconds, gain] of [
    [0, 1],
    [0.0061, 0.3],
    [0.0137, -0.2],
    [0.0229, 0.17],
    [0.0383, 0.12],
    [0.0571, -0.08]
  ])
    expect(around(seconds)).toBeCloseTo(gain, 2);
  expect(heard.subarray(3100).every((x) => Math.abs(x) < 1e-6)).toBe(true);
});

test('in a loop they come round, also in one shorter than the last reflection', () => {
  for (const length of [4800, 1500]) {
    const span = loopSpan(length, RATE, 1);
    const once = outdoors(span.noise(0), span);
    const long = new Float32Array(6 * 4800);
    for (let i = 0; i < long.length; i++) long[i] = span.noise(0)[i % length];
    const spare = new SpareArrays(long.length);
    const run = outdoors(long, { ...span, length: long.length, cyclic: false, spare });
    const from = length * Math.floor(long.length / length - 1);
    const apart = once.reduce((most, x, i) => Math.max(most, Math.abs(x - run[from + i])), 0);
    expect(apart).toBeLessThan(1e-5);
  }
});
