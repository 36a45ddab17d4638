import { describe, expect, test } from 'vitest';
import { loopLoudness } from '../../../../src/lib/listening/loudness.js';
import { usualValues } from '../../../../src/lib/sounds/knob.js';
import { settledAt } from '../../../../src/lib/sounds/motion/motion.js';
import { advanced } from '../../../helpers/advanced.js';
import { renderLoop, renderRide } from '../../../../src/lib/sounds/motion/ride.js';
import { type Steam, STEAM_KNOBS } from '../../../../src/lib/sounds/steam/steam.js';
import { STEAM_SOURCE } from '../../../../src/lib/sounds/steam/steam-source.js';
import { STEAM_PRESETS } from '../../../../src/lib/sounds/steam/steam-presets.js';
import { close } from '../../../helpers/close.js';
import { crestDb, rms } from '../../../helpers/levels.js';
import { machineTests } from '../../../helpers/machine-tests.js';
import { rideJoint } from '../../../helpers/ride-joint.js';
import { envelopeOf, lineAmplitude } from '../../../helpers/spectral-line.js';

const RATE = 16000;
/** For loudness: half of it is above all that steam hisses with. */
const LOUDNESS_RATE = 32000;
const USUAL: Steam = { ...usualValues(STEAM_KNOBS), kind: 'steam', name: 'usual' };
const NOTCHES = [0, 1, 2, 3, 4, 5, 6, 7, 8];

const render = (sound: Partial<Steam>, rate = RATE) => renderLoop(STEAM_SOURCE, { ...USUAL, ...sound }, rate);
const restOf = (sound: Steam) => settledAt(STEAM_SOURCE.target(sound));

machineTests(STEAM_SOURCE, STEAM_PRESETS, USUAL, {
  rateDb: 1.5,
  because: 'what lies above half of a low rate is missing, and the noise is another one'
});

describe.each(STEAM_PRESETS.map((preset) => [preset.name, preset] as const))('%s', (_, preset) => {
  const loops = NOTCHES.map((notch) => render({ ...preset, notch }, LOUDNESS_RATE));
  const loudness = loops.map((loop) => loopLoudness(loop, LOUDNESS_RATE));

  test('is louder at every notch than at the one below', () => {
    for (let notch = 1; notch <= 8; notch++)
      expect(loudness[notch]).toBeGreaterThan(loudness[notch - 1] + 0.3);
  });

  test('rests about 12 LU below notch 4 and works about 4 LU above it', () => {
    const because = 'asked for; presets differ by design';
    close(loudness[0] - loudness[4], -12, { abs: 1.5, because });
    close(loudness[8] - loudness[4], 4, { abs: 1, because });
  });

  test('has a moderate crest', () => {
    loops.forEach((loop, notch) => {
      expect(crestDb(loop)).toBeGreaterThan(10);
      // Single slow beats stand out of what is between them.
      expect(crestDb(loop)).toBeLessThan(notch < 4 ? 20.5 : 17.5);
    });
  });
});

test('real notches render', () => {
  expect(rms(render({ notch: 3.5 }))).toBeGreaterThan(rms(render({ notch: 3 })));
});

test('refuses what is out of range with a sentence', () => {
  expect(() => render({ cutoff: 0.9 })).toThrow(new RangeError('cutoff must be within 0.1 … 0.8, got 0.9'));
  expect(() => render({ cylinders: 2.5 })).toThrow(
    new RangeError('cylinders must be a whole number within 2 … 3, got 2.5')
  );
});

describe('standing', () => {
  const still = render({ notch: 0 });

  test('it marks no rate and has no beats', () => {
    expect(STEAM_SOURCE.marks({ ...USUAL, notch: 0 })).toEqual([]);
    const beats = (loop: Float32Array, rate: number) => lineAmplitude(envelopeOf(loop, RATE, 200), 200, rate);
    const [{ frequency }] = STEAM_SOURCE.marks({ ...USUAL, notch: 4 });
    expect(beats(render({ notch: 4 }), frequency)).toBeGreaterThan(5 * beats(still, frequency));
  });

  test('it is heard all the time, with the blower shut too', () => {
    for (const loop of [still, render({ notch: 0, blower: 0 })]) {
      const envelope = envelopeOf(loop, RATE, 10);
      expect(Math.min(...envelope)).toBeGreaterThan(-0.6);
      expect(loopLoudness(loop, RATE)).toBeGreaterThan(loopLoudness(render({ notch: 4 }), RATE) - 24);
    }
  });

  test('the blower hisses louder the further it is open', () => {
    const levels = [0, 0.5, 1].map((blower) => rms(render({ notch: 0, blower })));
    expect(levels[1]).toBeGreaterThan(1.3 * levels[0]);
    expect(levels[2]).toBeGreaterThan(1.3 * levels[1]);
  });
});

test('drain cocks hiss while it is slow and are shut by speed', () => {
  const more = (notch: number) => {
    const difference = render({ notch, drainCocks: true });
    render({ notch, drainCocks: false }).forEach((x, i) => (difference[i] -= x));
    return rms(difference) / rms(render({ notch, drainCocks: false }));
  };
  expect(more(1)).toBeGreaterThan(0.15);
  expect(more(8)).toBeLessThan(0.01 * more(1));
});

test('rods clank twice a turn, and no knob means no clank', () => {
  const without = render({ notch: 4, rods: 0, load: 0 });
  const clank = render({ notch: 4, rods: 1, load: 0 });
  without.forEach((x, i) => (clank[i] -= x));
  const [, { frequency: turn }] = STEAM_SOURCE.marks({ ...USUAL, notch: 4 });
  const envelope = envelopeOf(clank, RATE, 200);
  const between = [1.4, 1.6, 2.4, 2.6].map((orders) => lineAmplitude(envelope, 200, orders * turn));
  expect(lineAmplitude(envelope, 200, 2 * turn)).toBeGreaterThan(3 * Math.max(...between));
});

describe('rides', () => {
  const at = (notch: number): Steam => ({ ...USUAL, notch });

  test('take about 12 s from rest to notch 8 and 8 s back', () => {
    const up = renderRide(STEAM_SOURCE, at(8), restOf(at(0)), 8000).loopFrom / 8000;
    const down = renderRide(STEAM_SOURCE, at(0), restOf(at(8)), 8000).loopFrom / 8000;
    close(up, 12, { abs: 1.5, because: '"about"; it ends at the beginning of a turn' });
    close(down, 8, { abs: 1.5, because: '"about"' });
  });

  test('come to their loop without a step, also when turned back within a second', () => {
    const loop = at(0);
    const half = advanced(restOf(loop), STEAM_SOURCE.target(at(8)), STEAM_SOURCE.dynamics(loop), 0.5);
    for (const ride of [
      renderRide(STEAM_SOURCE, at(8), restOf(loop), RATE),
      renderRide(STEAM_SOURCE, at(0), half, RATE),
      renderRide(STEAM_SOURCE, at(5), restOf(at(4)), RATE)
    ]) {
      const { step, slope } = rideJoint(ride, RATE);
      expect(Math.max(step, slope)).toBeLessThan(1.2);
    }
  });

  test('begin where the machine was: the same beats, as loud', () => {
    const loop = render({ notch: 4 });
    const turn = STEAM_SOURCE.target(at(4)).speed;
    const from = { ...restOf(at(4)), turns: 3.3, seconds: 3.3 / turn };
    const ride = renderRide(STEAM_SOURCE, at(4), from, RATE);
    const start = Math.round((3.3 / turn) * RATE);
    const stretch = Math.floor(0.45 * RATE);
    const a = envelopeOf(loop.subarray(start, start + stretch), RATE, 80);
    const b = envelopeOf(ride.samples.subarray(0, stretch), RATE, 80);
    const dot = (x: Float32Array, y: Float32Array) => x.reduce((sum, v, i) => sum + v * y[i], 0);
    expect(dot(a, b) / Math.sqrt(dot(a, a) * dot(b, b))).toBeGreaterThan(0.6);
  });

  test('start hard and slow down softly', () => {
    const second = (ride: Float32Array, from: number) => rms(ride.subarray(from * RATE, (from + 2) * RATE));
    const up = renderRide(STEAM_SOURCE, at(8), restOf(at(0)), RATE).samples;
    const down = renderRide(STEAM_SOURCE, at(0), restOf(at(8)), RATE).samples;
    expect(second(up, 4)).toBeGreaterThan(4 * second(down, 3));
  });
});
