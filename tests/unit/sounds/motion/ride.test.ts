import { describe, expect, test } from 'vitest';
import { renderLoop, renderRide, wayTo } from '../../../../src/lib/sounds/motion/ride.js';
import { hasSettled, settledAt, type Motion } from '../../../../src/lib/sounds/motion/motion.js';
import { renderRunPast } from '../../../../src/lib/sounds/motion/run-past.js';
import { CLICKER, type Clicker } from '../../../helpers/clicker.js';
import { close } from '../../../helpers/close.js';
import { seam } from '../../../helpers/seam.js';

const RATE = 16000;
const at = (notch: number): Clicker => ({ notch, seed: 3 });

/** Where the clicks of a sound begin, in seconds. */
function clicks(samples: Float32Array): number[] {
  const found: number[] = [];
  for (let i = 1; i < samples.length; i++)
    if (
      samples[i] > 0.1 &&
      samples[i - 1] <= 0.1 &&
      (i - (found.at(-1) ?? -1e9) * RATE > 0.01 * RATE || !found.length)
    )
      found.push(i / RATE);
  return found;
}

const gaps = (times: number[]): number[] => times.slice(1).map((time, i) => time - times[i]);

describe('a loop', () => {
  test('is the whole number of patterns that lasts nearest to five seconds, and repeats itself', () => {
    const loop = renderLoop(CLICKER, at(4), RATE);
    close((loop.length / RATE) * 5.2, 26, { abs: 0.001, because: 'half a sample' });
    const times = clicks(Float32Array.from([...loop, ...loop]));
    for (const gap of gaps(times))
      close(gap, 1 / 20.8, {
        abs: 4.1 / RATE,
        because: 'two samples at either end: strong clicks are found earlier'
      });
    expect(seam(loop, RATE).step).toBeLessThan(1);
  });

  test('of a machine that stands has no clicks and lasts five seconds', () => {
    const loop = renderLoop(CLICKER, at(0), RATE);
    expect(clicks(loop)).toEqual([]);
    expect(loop.length).toBe(5 * RATE);
  });

  test('the same seed gives the same samples, another one others', () => {
    expect(renderLoop(CLICKER, at(3), RATE)).toEqual(renderLoop(CLICKER, at(3), RATE));
    expect(renderLoop(CLICKER, { notch: 3, seed: 4 }, RATE)).not.toEqual(renderLoop(CLICKER, at(3), RATE));
  });

  test('knobs and rates out of range are refused', () => {
    expect(() => renderLoop(CLICKER, at(9), RATE)).toThrow('notch must be within 0 … 8, got 9');
    expect(() => renderLoop(CLICKER, at(1), 4000)).toThrow('sample rate must be within 8000 … 192000 Hz');
  });
});

describe('a ride', () => {
  const from: Motion = { ...settledAt(CLICKER.target(at(2))), turns: 0.37 };
  const { samples, loopFrom } = renderRide(CLICKER, at(8), from, RATE);

  test('begins where the machine is', () => {
    // From 0.37 turns at 2.6 turns a second, the next quarter turn is at 0.5.
    close(clicks(samples)[0], 0.13 / 2.6, { rel: 0.05, because: 'it has begun to speed up' });
  });

  test('ends in the loop, sample by sample', () => {
    expect(samples.slice(loopFrom)).toEqual(renderLoop(CLICKER, at(8), RATE));
  });

  test('speeds up without a jump, across its end too', () => {
    const between = gaps(clicks(samples.slice(0, loopFrom + RATE)));
    expect(between[0]).toBeGreaterThan(0.08);
    close(between.at(-1)!, 1 / 41.6, {
      abs: 4.1 / RATE,
      because: 'two samples at either end: strong clicks are found earlier'
    });
    between.slice(1).forEach((gap, i) => {
      expect(gap).toBeLessThan(between[i] + 4.1 / RATE);
      expect(gap).toBeGreaterThan(0.7 * between[i]);
    });
  });

  test('is no rougher where it meets the loop than elsewhere', () => {
    const round = Float32Array.from([...samples.slice(loopFrom), ...samples.slice(0, loopFrom)]);
    // The loop's end is followed by its beginning, so here the ride's end is.
    const met = Float32Array.from([
      ...samples.slice(loopFrom),
      ...samples.slice(loopFrom - 4 * RATE, loopFrom)
    ]);
    expect(round.length).toBe(samples.length);
    expect(seam(met, RATE).step).toBeLessThan(1);
    expect(seam(met, RATE).slope).toBeLessThan(1);
  });

  test('down to a stand comes to rest', () => {
    const down = renderRide(CLICKER, at(0), { ...settledAt(CLICKER.target(at(8))), turns: 5.1 }, RATE);
    const between = gaps(clicks(down.samples));
    expect(between.length).toBeGreaterThan(10);
    between.slice(1).forEach((gap, i) => expect(gap).toBeGreaterThan(between[i] - 4.1 / RATE));
    expect(clicks(down.samples.slice(down.loopFrom))).toEqual([]);
  });

  test('thrown to and fro: each ride begins where the last one is by then', () => {
    let now = from;
    for (const notch of [8, 0, 5]) {
      const way = wayTo(CLICKER, at(notch), now);
      close(way[0].turns, now.turns, { abs: 1e-12, because: 'the same motion' });
      const next = way[300];
      expect(Math.abs(next.speed - now.speed)).toBeLessThan(0.3 * (10.4 / 1.5) * 1.01);
      now = next;
    }
  });

  test('its last motion is at the beginning of a pattern', () => {
    const end = wayTo(CLICKER, at(5), from).at(-1)!;
    close(end.turns, Math.round(end.turns), { abs: 1e-9, because: 'turned there' });
    expect(end.speed).toBe(CLICKER.target(at(5)).speed);
  });
});

describe('a ride that takes its load slowly', () => {
  const slow = { ...CLICKER, dynamics: () => ({ ...CLICKER.dynamics(at(8)), loading: 0.05 }) };
  const first = renderRide(slow, at(8), settledAt(CLICKER.target(at(0))), RATE);

  test('ends after eight seconds, at the beginning of a pattern, and says that it goes on', () => {
    expect(first.goesOn).toBe(true);
    close(first.loopFrom / RATE, 8, { abs: 0.2, because: 'a pattern, and a tick' });
    expect(renderRide(CLICKER, at(8), settledAt(CLICKER.target(at(0))), RATE).goesOn).toBe(false);
  });

  test('goes on from a second before its end with the same clicks, until it has settled', () => {
    let way = wayTo(slow, at(8), settledAt(CLICKER.target(at(0))));
    const [early, late] = [
      first.samples.slice(0, first.loopFrom),
      wayTo(slow, at(8), way[way.length - 1001])
    ];
    const next = renderRide(slow, at(8), way[way.length - 1001], RATE);
    // The last quarter of a second of a piece leads into the loop.
    const until = (times: number[]) => times.filter((time) => time < 0.7);
    const old = until(clicks(early.slice(-RATE)));
    until(clicks(next.samples)).forEach((time, i) =>
      close(time, old[i], {
        abs: 4.1 / RATE,
        because: 'two samples at either: louder clicks are found earlier'
      })
    );
    expect(late.at(-1)!.effort).toBeGreaterThan(way.at(-1)!.effort + 0.2);
    let seconds = way.length / 1000;
    for (let pieces = 0; pieces < 9 && !hasSettled(way.at(-1)!, CLICKER.target(at(8))); pieces++) {
      way = wayTo(slow, at(8), way[way.length - 1001]);
      seconds += way.length / 1000 - 1;
    }
    close(seconds, 20, { abs: 1.5, because: 'twentieth by twentieth, and the spool behind it' });
  });
});

describe('a run past', () => {
  const horn = { samples: new Float32Array(800).fill(0.2), loopFrom: 400 };
  const piece = renderRunPast(CLICKER, at(4), RATE, 0.5, horn);

  test('lasts half a minute, stands at first and at last, and runs between', () => {
    close(piece.length / RATE, 30, { abs: 1, because: 'it ends with a pattern, or when it stands' });
    const times = clicks(piece).filter((time) => time < 12 || time > 18);
    expect(times[0]).toBeGreaterThan(2.99);
    expect(times.at(-1)!).toBeLessThan(26);
  });

  test('has two blasts of the horn, which die away', () => {
    const level = (seconds: number) => {
      const from = Math.round(seconds * RATE);
      const stretch = piece.slice(from, from + 1600);
      return stretch.reduce((sum, x) => sum + x, 0) / 1600;
    };
    for (const inside of [13.5, 16]) expect(level(inside)).toBeGreaterThan(0.19);
    for (const outside of [12, 15.05, 17.5]) expect(level(outside)).toBeLessThan(0.1);
  });

  test('comes round without a seam', () => {
    expect(seam(piece, RATE).step).toBeLessThan(1);
  });
});
