import { expect, test } from 'vitest';
import { MotionTracker } from '../../../../src/lib/bench/sounding/motion-tracker.js';
import { movingKind, type MovingSound } from '../../../../src/lib/sounds/kinds.js';
import { settledAt } from '../../../../src/lib/sounds/motion/motion.js';
import { advanced } from '../../../helpers/advanced.js';
import { MACHINES } from '../../../../src/lib/sounds/roster.js';
import { close } from '../../../helpers/close.js';

const machine: MovingSound = MACHINES[0];
const kind = movingKind(machine);
const at = (notch: number): MovingSound => ({ ...machine, notch });
const target = (notch: number) => kind.target(at(notch));

test('a machine in its loop is where the loop is', () => {
  const tracker = new MotionTracker();
  tracker.loop(at(4), 10, 5.5);
  const motion = tracker.motionFor(at(6), 10 + 5.5 * 3 + 1.25)!;
  close(motion.seconds, 1.25, { abs: 0.0011, because: 'ticks of a millisecond' });
  close(motion.turns, 1.25 * target(4).speed, { abs: 0.02, because: 'ticks of a millisecond' });
  expect(motion.speed).toBe(target(4).speed);
});

test('on its ride it is on its way, and behind it in the loop', () => {
  const tracker = new MotionTracker();
  const from = { ...settledAt(target(1)), turns: 3.3 };
  tracker.ride(at(8), from, 100, 5);
  const soon = tracker.motionFor(at(0), 101)!;
  const expected = advanced(from, target(8), kind.dynamics(machine), 1);
  close(soon.speed, expected.speed, { rel: 1e-9, because: 'the same ticks' });
  close(soon.turns, expected.turns, { abs: 0.01, because: 'turned by less than a tick’s worth' });
  expect(tracker.motionFor(at(0), 130)!.speed).toBe(target(8).speed);
});

test('a ride that takes its load slowly goes on, and is on its way all along', () => {
  const tracker = new MotionTracker();
  expect(tracker.goOn(100)).toBeNull();
  const from = settledAt(target(0));
  tracker.ride(at(8), from, 100, 5);
  for (const [time, from0] of [
    [107, 7],
    [114, 14]
  ]) {
    const motion = tracker.goOn(time)!;
    const expected = advanced(from, target(8), kind.dynamics(machine), from0);
    close(motion.load, expected.load, { abs: 1e-6, because: 'the same ticks' });
    expect(tracker.motionFor(at(0), time)).toEqual(motion);
  }
  close(tracker.motionFor(at(0), 118)!.load, advanced(from, target(8), kind.dynamics(machine), 18).load, {
    abs: 1e-6,
    because: 'the same ticks'
  });
  expect(tracker.goOn(140)).toBeNull();
});

test('before it has begun it is where it begins', () => {
  const tracker = new MotionTracker();
  tracker.ride(at(8), settledAt(target(2)), 100, 5);
  expect(tracker.motionFor(at(0), 99.9)!.speed).toBe(target(2).speed);
});

test('another machine, a turned knob or a run past is no ride; another name or cord is', () => {
  const tracker = new MotionTracker();
  expect(tracker.motionFor(at(4), 0)).toBeNull();
  tracker.loop(at(4), 0, 5);
  expect(tracker.motionFor(at(4), 1), 'no ride to where it is').toBeNull();
  expect(tracker.isBoundFor(at(4))).toBe(true);
  expect(tracker.isBoundFor(at(5))).toBe(false);
  expect(tracker.motionFor({ ...at(5), name: 'mine', signal: 'whistle' }, 1)).not.toBeNull();
  expect(tracker.motionFor({ ...at(4), seed: 5 }, 1)).toBeNull();
  expect(tracker.motionFor({ ...at(4), runPast: true }, 1)).toBeNull();
  expect(tracker.motionFor(MACHINES[1], 1)).toBeNull();
  tracker.stop();
  expect(tracker.motionFor(at(4), 1)).toBeNull();
});
