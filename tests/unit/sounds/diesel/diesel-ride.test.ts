import { describe, expect, test } from 'vitest';
import { type Diesel } from '../../../../src/lib/sounds/diesel/diesel.js';
import { DIESEL_SOURCE } from '../../../../src/lib/sounds/diesel/diesel-source.js';
import { DIESEL_PRESETS } from '../../../../src/lib/sounds/diesel/diesel-presets.js';
import { leadingSpan, loopSpan } from '../../../../src/lib/sounds/blocks/span.js';
import { courseThrough, pulsesOf } from '../../../../src/lib/sounds/motion/course.js';
import { type Motion, settledAt, ticked } from '../../../../src/lib/sounds/motion/motion.js';
import { advanced } from '../../../helpers/advanced.js';
import { renderLoop, renderRide, wayTo } from '../../../../src/lib/sounds/motion/ride.js';
import { seam } from '../../../helpers/seam.js';

const RATE = 24000;
// In a hurry, with the load at once: how rides were before there was a slow load, and what an old bench still holds.
const [CAB, ROAD] = DIESEL_PRESETS.map((preset): Diesel => ({ ...preset, loading: 0 }));
const at = (sound: Diesel, notch: number): Diesel => ({ ...sound, notch });
const target = (sound: Diesel, notch: number) => DIESEL_SOURCE.target(at(sound, notch));
const dynamics = (sound: Diesel) => DIESEL_SOURCE.dynamics(sound);

const rms = (samples: Float32Array, from: number, to: number) => {
  const part = samples.subarray(Math.round(from * RATE), Math.round(to * RATE));
  return Math.sqrt(part.reduce((sum, x) => sum + x * x, 0) / part.length);
};

/** The motions of a machine whose lever is moved to these notches, after so many seconds each. */
function motionsOf(
  sound: Diesel,
  from: Motion,
  moves: readonly { notch: number; seconds: number }[]
): Motion[] {
  const motions = [from];
  for (const { notch, seconds } of moves)
    for (let tick = 0; tick < seconds * 1000; tick++)
      motions.push(ticked(motions[motions.length - 1], target(sound, notch), dynamics(sound)));
  return motions;
}

/** How rough a place in a sound is beside the second around it: see `seam`, which looks at the beginning. */
function roughnessAt(samples: Float32Array, place: number): number {
  const around = Math.round(0.5 * RATE);
  const turned = new Float32Array(2 * around);
  turned.set(samples.subarray(place, place + around));
  turned.set(samples.subarray(place - around, place), around);
  const { step, slope, treble } = seam(turned, RATE);
  return Math.max(step, slope, treble);
}

describe('0 → 8 → 0 within a second', () => {
  const idle = settledAt(target(CAB, 0));
  const moves = [
    { notch: 8, seconds: 0.5 },
    { notch: 0, seconds: 0.5 }
  ];

  test('the interval between firings never jumps', () => {
    const motions = motionsOf(CAB, idle, [...moves, { notch: 0, seconds: 5 }]);
    const pulses = pulsesOf(courseThrough(motions, RATE), 6);
    const intervals = pulses.slice(1).map(({ at: place }, i) => place - pulses[i].at);
    for (let i = 1; i < intervals.length; i++) {
      // The fastest the engine gains is its range in six seconds: 1.1 % of idle speed within a firing of 24 ms.
      expect(Math.abs(intervals[i] / intervals[i - 1] - 1)).toBeLessThan(0.015);
      expect(pulses[i].number).toBe(pulses[i - 1].number + 1);
    }
    expect(Math.min(...intervals)).toBeLessThan(0.93 * (RATE / 42));
    expect(intervals[intervals.length - 1] / (RATE / 42)).toBeCloseTo(1, 3);
  });

  test('rides follow each other firing by firing, and the joints are no rougher than the rest', () => {
    const up = renderRide(DIESEL_SOURCE, at(CAB, 8), idle, RATE);
    const turned = advanced(idle, target(CAB, 8), dynamics(CAB), 0.5);
    const down = renderRide(DIESEL_SOURCE, at(CAB, 0), turned, RATE);
    const loop = renderLoop(DIESEL_SOURCE, at(CAB, 0), RATE);

    // Played as the page plays them: each fades into the next, with equal gain, within 25 ms.
    const joints = [RATE, 1.5 * RATE];
    const sound = new Float32Array(3 * RATE);
    sound.set(loop.subarray(loop.length - RATE));
    exchange(sound, loop, up.samples, joints[0]);
    exchange(sound, up.samples.subarray(RATE / 2), down.samples, joints[1]);
    for (const joint of joints)
      for (const place of [joint, joint + 0.0125 * RATE, joint + 0.025 * RATE])
        expect(roughnessAt(sound, Math.round(place))).toBeLessThan(1.25);
    // The firings are the same ones on both sides: the fade does not make a hole.
    const before = rms(sound, 1.3, 1.5);
    expect(rms(sound, 1.505, 1.525)).toBeGreaterThan(0.4 * before);
  });

  test('whenever the lever moves the joint is smooth, and a cut without a fade would be seen', () => {
    const up = renderRide(DIESEL_SOURCE, at(CAB, 8), idle, RATE).samples;
    const loop = renderLoop(DIESEL_SOURCE, at(CAB, 0), RATE);
    const cuts: number[] = [];
    for (const seconds of [0.77, 0.81, 0.84, 0.88, 0.92, 0.95, 0.98, 1]) {
      const turned = advanced(idle, target(CAB, 8), dynamics(CAB), seconds);
      const { samples } = renderRide(DIESEL_SOURCE, at(CAB, 0), turned, RATE, loop);
      const place = Math.round(seconds * RATE);
      const sound = up.slice(0, place + RATE);
      sound.set(samples.subarray(0, RATE), place);
      cuts.push(roughnessAt(sound, place));
      exchange(sound, up.subarray(place), samples, place);
      expect(roughnessAt(sound, place)).toBeLessThan(1.25);
    }
    expect(cuts.filter((rough) => rough > 1.25).length).toBeGreaterThanOrEqual(2);
  });

  test('the ride comes back to the idle it left', () => {
    const turned = advanced(idle, target(CAB, 8), dynamics(CAB), 0.5);
    const { samples, loopFrom } = renderRide(DIESEL_SOURCE, at(CAB, 0), turned, RATE);
    expect(loopFrom / RATE).toBeLessThan(5);
    expect(samples.subarray(loopFrom)).toEqual(renderLoop(DIESEL_SOURCE, at(CAB, 0), RATE));
  });
});

/** From `place` on what comes next, faded in over what would go on, for 25 ms. */
function exchange(sound: Float32Array, goesOn: Float32Array, comes: Float32Array, place: number): void {
  const width = 0.025 * RATE;
  for (let i = 0; place + i < sound.length; i++) {
    const share = i < width ? 0.5 - 0.5 * Math.cos((Math.PI * (i + 0.5)) / width) : 1;
    sound[place + i] = share * comes[i] + (1 - share) * goesOn[i];
  }
}

describe.each([
  [CAB.name, CAB],
  [ROAD.name, ROAD]
] as const)('%s', (_, sound) => {
  const idle = settledAt(target(sound, 0));
  const full = settledAt(target(sound, 8));
  const up = renderRide(DIESEL_SOURCE, at(sound, 8), idle, RATE);
  const down = renderRide(DIESEL_SOURCE, at(sound, 0), full, RATE);

  test('it takes 6 to 8 seconds up to full speed and 5 to 6.5 down to idle', () => {
    const seconds = (from: Motion, notch: number) => {
      const { speed } = target(sound, notch);
      return (
        motionsOf(sound, from, [{ notch, seconds: 10 }]).findIndex((motion) => motion.speed === speed) / 1000
      );
    };
    expect(seconds(idle, 8)).toBeGreaterThan(6);
    expect(seconds(idle, 8)).toBeLessThan(8);
    expect(seconds(full, 0)).toBeGreaterThan(5);
    expect(seconds(full, 0)).toBeLessThan(6.5);
  });

  test('effort comes before speed, and the turbocharger last', () => {
    const [, later] = [0, 1].map((seconds) => motionsOf(sound, idle, [{ notch: 8, seconds }]).at(-1)!);
    const share = (now: number, from: number, to: number) => (now - from) / (to - from);
    expect(share(later.effort, idle.effort, full.effort)).toBeGreaterThan(0.9);
    expect(share(later.speed, idle.speed, full.speed)).toBeLessThan(0.25);
    expect(share(later.spool, idle.spool, full.spool)).toBeLessThan(0.5);
  });

  test('it is heard: notched up it is loud before it is fast, shut off it is hollow before it is slow', () => {
    const still = renderLoop(DIESEL_SOURCE, at(sound, 0), RATE);
    const loud = renderLoop(DIESEL_SOURCE, at(sound, 8), RATE);
    const [low, high] = [rms(still, 0, 4), rms(loud, 0, 4)];
    expect(rms(up.samples, 0.5, 1)).toBeGreaterThan(1.6 * low);
    expect(rms(down.samples, 0.5, 1)).toBeLessThan(0.5 * high);
  });

  test('the joint of ride and loop is no rougher than the rest', () => {
    for (const { samples, loopFrom } of [up, down]) expect(roughnessAt(samples, loopFrom)).toBeLessThan(1.25);
  });
});

// An electric transmission lets the engine rev first and takes its load over 20 to 30 s (common practice, from memory).
describe.each(
  DIESEL_PRESETS.filter(({ loading }) => loading > 0).map((preset) => [preset.name, preset] as const)
)('%s takes its load slowly', (_, sound) => {
  const idle = settledAt(target(sound, 0));
  const full = target(sound, 8);
  const motions = motionsOf(sound, idle, [{ notch: 8, seconds: 31 }]);
  const first = (is: (motion: Motion) => boolean) => motions.findIndex(is) / 1000;
  const share = ({ load }: Motion) => (load - idle.effort) / (full.effort - idle.effort);

  test('it is at full speed within 8 s, and at full load after 20 to 30', () => {
    const fast = first(({ speed }) => speed === full.speed);
    const loaded = first((motion) => motion.load === full.effort);
    expect(fast).toBeGreaterThan(6);
    expect(fast).toBeLessThan(8);
    expect(share(motions[Math.round(1000 * fast)])).toBeLessThan(0.45);
    expect(loaded).toBeGreaterThanOrEqual(19.99);
    expect(loaded).toBeLessThan(30);
    expect(first((motion) => motion.spool > 0.95 * full.effort)).toBeGreaterThan(loaded);
  });

  test('it is heard: louder from 9 to 23 s, at one speed', () => {
    const way = motions.slice(8000, 24001);
    const { course, span } = {
      course: courseThrough(way, RATE),
      span: leadingSpan(16 * RATE, loopSpan(5 * RATE, RATE, 1))
    };
    const samples = DIESEL_SOURCE.render(at(sound, 8), course, span);
    const louder = [1, 4, 8, 12].map((from) => 20 * Math.log10(rms(samples, from, from + 3)));
    louder.slice(1).forEach((level, i) => expect(level).toBeGreaterThan(louder[i] + 0.3));
    expect(louder[3] - louder[0]).toBeGreaterThan(2);
  });
});

test('a railbus, whose gears know no such thing, takes its load at once', () => {
  const railbus = DIESEL_PRESETS.find(({ name }) => name.startsWith('Railbus'))!;
  expect(dynamics(railbus).loading).toBe(Infinity);
});

test('pieces of a slow ride meet no rougher than the rest', () => {
  const sound = at(DIESEL_PRESETS[0], 8);
  const loop = renderLoop(DIESEL_SOURCE, sound, RATE);
  const way = wayTo(DIESEL_SOURCE, sound, settledAt(target(sound, 0)));
  const piece = renderRide(DIESEL_SOURCE, sound, way[0], RATE, loop);
  const next = renderRide(DIESEL_SOURCE, sound, way[way.length - 1001], RATE, loop);
  const place = Math.round((way.length - 1001) * 0.001 * RATE);
  const joined = piece.samples.slice(0, place + RATE);
  exchange(joined, piece.samples.subarray(place), next.samples, place);
  for (const off of [0, 0.0125, 0.025])
    expect(roughnessAt(joined, Math.round(place + off * RATE))).toBeLessThan(1.25);
});
