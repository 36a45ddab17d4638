import { describe, expect, test } from 'vitest';
import { loopLoudness } from '../../../../src/lib/listening/loudness.js';
import { type Electric, ELECTRIC_KNOBS } from '../../../../src/lib/sounds/electric/electric.js';
import { ELECTRIC_SOURCE } from '../../../../src/lib/sounds/electric/electric-source.js';
import { ELECTRIC_PRESETS } from '../../../../src/lib/sounds/electric/electric-presets.js';
import { usualValues } from '../../../../src/lib/sounds/knob.js';
import { settledAt } from '../../../../src/lib/sounds/motion/motion.js';
import { advanced } from '../../../helpers/advanced.js';
import { renderLoop, renderRide } from '../../../../src/lib/sounds/motion/ride.js';
import { close } from '../../../helpers/close.js';
import { crestDb, rms } from '../../../helpers/levels.js';
import { machineTests } from '../../../helpers/machine-tests.js';
import { rideJoint } from '../../../helpers/ride-joint.js';
import { envelopeOf, lineAmplitude } from '../../../helpers/spectral-line.js';

const RATE = 16000;
const USUAL: Electric = { ...usualValues(ELECTRIC_KNOBS), kind: 'electric', name: 'usual' };
const NOTCHES = [0, 1, 2, 3, 4, 5, 6, 7, 8];

const render = (sound: Partial<Electric>, rate = RATE) =>
  renderLoop(ELECTRIC_SOURCE, { ...USUAL, ...sound }, rate);
const restOf = (sound: Electric) => settledAt(ELECTRIC_SOURCE.target(sound));

machineTests(ELECTRIC_SOURCE, ELECTRIC_PRESETS, USUAL, {
  rateDb: 1,
  because: 'the noise is another one, and 8 kHz has no treble'
});

describe.each(ELECTRIC_PRESETS.map((preset) => [preset.name, preset] as const))('%s', (_, preset) => {
  const loops = NOTCHES.map((notch) => render({ ...preset, notch }));
  const loudness = loops.map((loop) => loopLoudness(loop, RATE));

  test('is louder at every notch than at the one below', () => {
    for (let notch = 1; notch <= 8; notch++)
      expect(loudness[notch]).toBeGreaterThan(loudness[notch - 1] + 0.2);
  });

  test('rests about 9 LU below notch 4 and runs about 3 LU above it', () => {
    const because = 'asked for; presets differ by design';
    close(loudness[0] - loudness[4], -9, { abs: 1.5, because });
    close(loudness[8] - loudness[4], 3, { abs: 1, because });
  });

  test('has a moderate crest', () => {
    for (const loop of loops) {
      expect(crestDb(loop)).toBeGreaterThan(8);
      expect(crestDb(loop)).toBeLessThan(16);
    }
  });
});

test('real notches render', () => {
  expect(rms(render({ notch: 3.5 }))).toBeGreaterThan(rms(render({ notch: 0 })));
});

test('refuses what is out of range with a sentence', () => {
  expect(() => render({ gearRatio: 9 })).toThrow(new RangeError('gear ratio must be within 1.5 … 8, got 9'));
  expect(() => render({ lineFrequency: '25 Hz' as '50 Hz' })).toThrow(
    new RangeError('line frequency must be "16.7 Hz" or "50 Hz" or "60 Hz", got 25 Hz')
  );
});

test('each part is heard and can be left out', () => {
  const none = { inverter: 0, blowers: 0, hum: 0, gears: 0 };
  expect(rms(render({ ...none, notch: 4 }))).toBe(0);
  for (const part of ['inverter', 'blowers', 'hum', 'gears'] as const) {
    const [half, full] = [0.5, 1].map((share) => rms(render({ ...none, [part]: share, notch: 4 })));
    expect(half).toBeGreaterThan(0.005);
    close(full / half, 2, { rel: 1e-4, because: 'single precision' });
  }
});

test('at rest only hum and blowers sound, and the hum is marked', () => {
  const none = { inverter: 0, blowers: 0, hum: 0, gears: 0 };
  expect(rms(render({ ...none, inverter: 1, gears: 1 }))).toBe(0);
  expect(rms(render({ ...none, hum: 1 }))).toBeGreaterThan(0.005);
  expect(ELECTRIC_SOURCE.marks(USUAL)).toEqual([{ frequency: 100, name: 'hum', harmonics: 8 }]);
  expect(ELECTRIC_SOURCE.marks({ ...USUAL, notch: 4 }).map(({ name }) => name)).toEqual(['hum', 'gear mesh']);
});

test('what does not run true swells with every turn of the wheels', () => {
  const turn = ELECTRIC_SOURCE.target({ ...USUAL, notch: 2 }).speed;
  const envelope = envelopeOf(render({ inverter: 0, hum: 0, blowers: 0, gears: 1, notch: 2 }), RATE, 200);
  const between = [0.5, 1.5, 2.5].map((orders) => lineAmplitude(envelope, 200, orders * turn));
  expect(lineAmplitude(envelope, 200, turn)).toBeGreaterThan(2 * Math.max(...between));
});

describe('rides', () => {
  const at = (notch: number): Electric => ({ ...USUAL, notch });

  test('take about 12 s from rest to notch 8 and 9 s back', () => {
    const up = renderRide(ELECTRIC_SOURCE, at(8), restOf(at(0)), 8000).loopFrom / 8000;
    const down = renderRide(ELECTRIC_SOURCE, at(0), restOf(at(8)), 8000).loopFrom / 8000;
    close(up, 12.5, { abs: 1.5, because: '"about"; it ends at the beginning of a turn' });
    close(down, 9, { abs: 1.5, because: '"about"' });
  });

  test('come to their loop without a step, also when turned back within a second', () => {
    const half = advanced(restOf(at(0)), ELECTRIC_SOURCE.target(at(8)), ELECTRIC_SOURCE.dynamics(USUAL), 0.5);
    for (const ride of [
      renderRide(ELECTRIC_SOURCE, at(8), restOf(at(0)), RATE),
      renderRide(ELECTRIC_SOURCE, at(0), half, RATE),
      renderRide(ELECTRIC_SOURCE, at(5), restOf(at(4)), RATE)
    ]) {
      const { step, slope } = rideJoint(ride, RATE);
      expect(Math.max(step, slope)).toBeLessThan(1.2);
    }
  });

  test('keep their tones through the blend into the loop: no dip', () => {
    for (const part of ['hum', 'inverter', 'blowers'] as const) {
      const sound: Electric = { ...USUAL, inverter: 0, blowers: 0, hum: 0, gears: 0, [part]: 1, notch: 5 };
      const { samples, loopFrom } = renderRide(ELECTRIC_SOURCE, sound, restOf({ ...sound, notch: 4 }), RATE);
      const level = (from: number) =>
        rms(samples.subarray(loopFrom + from * RATE, loopFrom + (from + 0.15) * RATE));
      close(level(-0.2), level(0.2), { rel: 0.25, because: 'a blend out of phase would halve it' });
    }
  });

  test('begin in the phase in which the hum was', () => {
    const still: Electric = { ...USUAL, inverter: 0, blowers: 0, gears: 0, hum: 1 };
    const loop = renderLoop(ELECTRIC_SOURCE, still, RATE);
    const from = { ...restOf(still), seconds: 2.0042 };
    const ride = renderRide(ELECTRIC_SOURCE, { ...still, notch: 8 }, from, RATE).samples;
    const start = Math.round(from.seconds * RATE);
    for (let i = 0; i < 0.02 * RATE; i++)
      close(ride[i], loop[start + i], { abs: 0.2 * rms(loop), because: 'the effort is already rising' });
  });

  test('braking is heard in the inverter, and then it falls silent', () => {
    const sound: Electric = { ...USUAL, blowers: 0, hum: 0, gears: 0, inverter: 1, notch: 0 };
    const { samples, loopFrom } = renderRide(ELECTRIC_SOURCE, sound, restOf({ ...sound, notch: 8 }), RATE);
    const whole = rms(renderLoop(ELECTRIC_SOURCE, { ...sound, notch: 8 }, RATE));
    expect(rms(samples.subarray(4 * RATE, 6 * RATE))).toBeGreaterThan(0.5 * whole);
    expect(rms(samples.subarray(loopFrom))).toBe(0);
  });
});
