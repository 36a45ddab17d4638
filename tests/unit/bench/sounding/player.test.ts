import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Player } from '../../../../src/lib/bench/sounding/player.js';
import type { Loop } from '../../../../src/lib/bench/sounding/sound-cache.js';
import { type MovingSound, movingKind } from '../../../../src/lib/sounds/kinds.js';
import { type Motion, TICK } from '../../../../src/lib/sounds/motion/motion.js';
import { hasSettled } from '../../../../src/lib/sounds/motion/motion.js';
import { wayTo } from '../../../../src/lib/sounds/motion/ride.js';
import { MACHINES } from '../../../../src/lib/sounds/roster.js';
import { close } from '../../../helpers/close.js';

const RATE = 1000;
const idle: MovingSound = { ...MACHINES[0], notch: 0 };
const full: MovingSound = { ...idle, notch: 8 };
const loopOf = (sound: MovingSound): Loop => ({
  key: String(sound.notch),
  sound,
  samples: new Float32Array(5 * RATE),
  sampleRate: RATE,
  figures: {} as Loop['figures']
});

/** A room whose clock is that of the test, and a cache that makes rides of the right length with nothing in them. */
function atHand() {
  const set: { at: number; seconds: number; loopFrom: number }[] = [];
  const asked: Motion[] = [];
  const room = {
    get now() {
      return performance.now() / 1000;
    },
    setSound: (samples: Float32Array, { at = 0, loopFrom = 0 } = {}) =>
      void set.push({ at, seconds: samples.length / RATE, loopFrom: loopFrom / RATE })
  };
  const cache = {
    ride: (sound: MovingSound, from: Motion) => {
      asked.push(from);
      const kind = movingKind(sound);
      const way = wayTo(kind, sound, from);
      const loopFrom = Math.round((way.length - 1) * TICK * RATE);
      const goesOn = !hasSettled(way.at(-1)!, kind.target(sound));
      const ride = { samples: new Float32Array(loopFrom + 5 * RATE), loopFrom, goesOn };
      return Promise.resolve({ ride, loop: Promise.resolve(loopOf(sound)) });
    }
  };
  return { set, asked, player: new Player(room, cache) };
}

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] });
});
afterEach(() => {
  vi.useRealTimers();
});

test('a slow ride is heard in pieces that lap over each other by a second, until the machine has settled', async () => {
  const { set, asked, player } = atHand();
  player.exchange(loopOf(idle));
  await vi.advanceTimersByTimeAsync(1000);
  await player.ride(full, RATE, new AbortController().signal);
  expect(set.length).toBe(2);
  await vi.advanceTimersByTimeAsync(40_000);
  const pieces = set.slice(1);
  expect(pieces.length).toBe(4);
  pieces.slice(1).forEach(({ at }, i) => {
    close(at, pieces[i].at + pieces[i].loopFrom - 1, { abs: 1e-6, because: 'a second before its end' });
    expect(asked[i + 1].load).toBeGreaterThan(asked[i].load + 0.2);
  });
  const last = pieces.at(-1)!;
  close(last.at + last.loopFrom - pieces[0].at, 25, {
    abs: 1,
    because: '22 s until full load, then the spool'
  });
});

test('a lever that is moved, or another sound, ends what was to come', async () => {
  for (const change of ['lever', 'sound']) {
    const { set, asked, player } = atHand();
    player.exchange(loopOf(idle));
    await vi.advanceTimersByTimeAsync(1000);
    await player.ride(full, RATE, new AbortController().signal);
    await vi.advanceTimersByTimeAsync(3000);
    if (change === 'lever') await player.ride(idle, RATE, new AbortController().signal);
    else player.exchange(loopOf({ ...idle, seed: 5 }));
    await vi.advanceTimersByTimeAsync(40_000);
    expect(set.length, change).toBe(3);
    if (change !== 'lever') continue;
    const kind = movingKind(full);
    // From the lever's first ride, 0.18 s after it was moved, to its second one.
    const taken = 3 * kind.dynamics(full).loading;
    close(asked.at(-1)!.load, kind.target(idle).effort + taken, { abs: 0.002, because: 'a tick or two' });
  }
});

test('in a hurry the whole ride is one piece', async () => {
  const { set, player } = atHand();
  player.exchange(loopOf({ ...idle, loading: 0 } as MovingSound));
  await player.ride({ ...full, loading: 0 } as MovingSound, RATE, new AbortController().signal);
  await vi.advanceTimersByTimeAsync(40_000);
  expect(set.length).toBe(2);
});
