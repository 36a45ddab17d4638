import { expect, test } from 'vitest';
import {
  hasSettled,
  settledAt,
  TICK,
  ticked,
  type Dynamics
} from '../../../../src/lib/sounds/motion/motion.js';
import { advanced } from '../../../helpers/advanced.js';
import { close } from '../../../helpers/close.js';

const DYNAMICS: Dynamics = {
  range: 10,
  rise: 5,
  fall: 2.5,
  answer: 0.2,
  loading: Infinity,
  spoolUp: 2,
  spoolDown: 1
};
const IDLE = { speed: 5, effort: 0.1 };
const FULL = { speed: 15, effort: 0.9 };

test('a settled machine stays as it is, and turns', () => {
  const start = settledAt(FULL);
  const later = advanced(start, FULL, DYNAMICS, 2);
  expect(hasSettled(start, FULL)).toBe(true);
  expect([later.speed, later.effort, later.spool]).toEqual([15, 0.9, 0.9]);
  close(later.turns, 30, { abs: 1e-9, because: '15 turns a second for 2 s' });
  close(later.seconds, 2, { abs: 1e-9, because: 'ticks are added up' });
});

test('it goes through its range in the time it takes, and a little longer for the end of it', () => {
  for (const [from, to, time] of [
    [IDLE, FULL, DYNAMICS.rise],
    [FULL, IDLE, DYNAMICS.fall]
  ] as const) {
    const most = advanced(settledAt(from), to, DYNAMICS, 0.8 * time);
    close(Math.abs(most.speed - from.speed), 8, { abs: 0.05, because: 'evenly, but for the end' });
    const end = advanced(settledAt(from), to, DYNAMICS, time + 2.5);
    expect(end.speed).toBe(to.speed);
  }
});

test('speed never jumps and never overshoots; effort leads up and falls away first', () => {
  let now = settledAt(IDLE);
  let leading = false;
  for (let t = 0; t < 9; t += TICK) {
    const next = ticked(now, FULL, DYNAMICS);
    expect(next.speed - now.speed).toBeGreaterThanOrEqual(0);
    expect(next.speed - now.speed).toBeLessThanOrEqual((10 / 5) * TICK * 1.0001);
    expect(next.speed).toBeLessThanOrEqual(15);
    if (t < 1 && next.effort > 0.85 && next.speed < 8) leading = true;
    now = next;
  }
  expect(leading).toBe(true);
  const shut = advanced(settledAt(FULL), IDLE, DYNAMICS, 0.8);
  expect(shut.effort).toBeLessThan(0.05);
  expect(shut.speed).toBeGreaterThan(10);
});

test('a slow load is taken evenly once the engine is free to rev, and let go at once', () => {
  const slow: Dynamics = { ...DYNAMICS, loading: 0.04 };
  const idle = settledAt(IDLE);
  const revved = advanced(idle, FULL, slow, 6.5);
  expect(revved.speed).toBe(FULL.speed);
  // 0.1 + 0.04·6.5 of the 0.9 that it will take.
  close(revved.load, 0.36, { abs: 1e-6, because: 'ticks are added up' });
  close(revved.effort, 0.36, { abs: 0.02, because: 'the effort answers within 0.2 s' });
  expect(hasSettled(revved, FULL)).toBe(false);
  const most = Math.max(...[0.5, 1, 2, 3, 4, 5].map((seconds) => advanced(idle, FULL, slow, seconds).effort));
  expect(most).toBeLessThan(0.75);
  expect(advanced(idle, FULL, slow, 19.8).load).toBeLessThan(0.9);
  expect(hasSettled(advanced(idle, FULL, slow, 25), FULL)).toBe(true);
  expect(advanced(settledAt(FULL), IDLE, slow, 0.001).load).toBe(0.1);
  expect(advanced(settledAt(FULL), IDLE, slow, 2).effort).toEqual(
    advanced(settledAt(FULL), IDLE, DYNAMICS, 2).effort
  );
});

test('the spool follows late, up slower than down', () => {
  const up = advanced(settledAt(IDLE), FULL, DYNAMICS, 1);
  expect(up.spool).toBeLessThan(0.6);
  expect(up.effort).toBeGreaterThan(0.9);
  const down = advanced(settledAt(FULL), IDLE, DYNAMICS, 1);
  expect(down.spool).toBeLessThan(0.5);
  expect(hasSettled(advanced(settledAt(IDLE), FULL, DYNAMICS, 14), FULL)).toBe(true);
});

test('the lever thrown up and down within a second leads back, without a jump', () => {
  let now = settledAt(IDLE);
  for (const [target, time] of [
    [FULL, 0.5],
    [IDLE, 0.5],
    [IDLE, 12]
  ] as const) {
    const next = advanced(now, target, DYNAMICS, time);
    expect(next.turns).toBeGreaterThan(now.turns);
    now = next;
  }
  expect(hasSettled(now, IDLE)).toBe(true);
});

test('steps of time may be cut anywhere', () => {
  const once = advanced(settledAt(IDLE), FULL, DYNAMICS, 3);
  const twice = advanced(advanced(settledAt(IDLE), FULL, DYNAMICS, 1.234), FULL, DYNAMICS, 1.766);
  expect(twice).toEqual(once);
});
