import { describe, expect, test } from 'vitest';
import { checkKnobs } from '../../../../src/lib/sounds/knob.js';
import { renderHeldWhistle } from '../../../../src/lib/sounds/steam/held-whistle.js';
import { valveCurve } from '../../../../src/lib/sounds/steam/valve-curve.js';
import { WHISTLE_KNOBS, whistlePitches } from '../../../../src/lib/sounds/steam/whistle.js';
import { WHISTLE_SOURCE } from '../../../../src/lib/sounds/steam/whistle-source.js';
import { WHISTLE_PRESETS } from '../../../../src/lib/sounds/steam/whistle-presets.js';
import { whistleBell } from '../../../../src/lib/sounds/steam/whistle-bell.js';
import { filter, section } from '../../../../src/lib/sounds/blocks/filter.js';
import { random } from '../../../../src/lib/sounds/blocks/random.js';
import { rms } from '../../../helpers/levels.js';
import { close } from '../../../helpers/close.js';
import { rideJoint } from '../../../helpers/ride-joint.js';
import { seam } from '../../../helpers/seam.js';
import { lineAmplitude } from '../../../helpers/spectral-line.js';

const RATE = 32000;
const [WHISTLE] = WHISTLE_PRESETS;
const piece = (samples: Float32Array, from: number, to: number, rate = RATE) =>
  samples.subarray(from * rate, to * rate);

test('every preset is within its knobs', () => {
  for (const preset of WHISTLE_PRESETS) checkKnobs(WHISTLE_KNOBS, preset);
});

describe('the loop', () => {
  const loop = WHISTLE_SOURCE.render(WHISTLE, RATE);

  test('is blown long, then short, with silence between and behind', () => {
    close(loop.length, 5.6 * RATE, { abs: 0.5, because: 'whole samples' });
    const long = rms(piece(loop, 1, 2.5));
    expect(rms(piece(loop, 3.6, 4))).toBeGreaterThan(0.8 * long);
    expect(rms(piece(loop, 3.2, 3.34))).toBeLessThan(0.05 * long);
    expect(rms(piece(loop, 5, 5.6))).toBeLessThan(0.001 * long);
  });

  test('begins with a chiff: treble before the pitch', () => {
    const treble = filter(loop, section('highPass', 5000, 0.7, RATE), { sampleRate: RATE, cyclic: true });
    expect(rms(piece(treble, 0.18, 0.24))).toBeGreaterThan(2 * rms(piece(treble, 1, 2.5)));
    const pitch = Math.min(...whistlePitches(WHISTLE));
    const early = lineAmplitude(piece(loop, 0.16, 0.22), RATE, pitch);
    expect(early).toBeLessThan(0.7 * lineAmplitude(piece(loop, 1, 1.06), RATE, pitch));
  });

  test('has no seam', () => {
    for (const preset of WHISTLE_PRESETS) {
      const { step, slope, treble } = seam(WHISTLE_SOURCE.render(preset, RATE), RATE);
      expect(Math.max(step, slope, treble)).toBeLessThan(1);
    }
  });
});

describe('held', () => {
  test('it comes to its loop without a step, and round', () => {
    for (const preset of WHISTLE_PRESETS) {
      const held = renderHeldWhistle(preset, RATE);
      const joint = rideJoint(held, RATE);
      expect(Math.max(joint.step, joint.slope)).toBeLessThan(1.2);
      const { step, slope, treble } = seam(held.samples.slice(held.loopFrom), RATE);
      expect(Math.max(step, slope, treble)).toBeLessThan(1.2);
    }
  });

  test('what leads in is already the end of the loop', () => {
    const { samples, loopFrom } = renderHeldWhistle(WHISTLE, RATE);
    const gap = 0.2 * RATE;
    const lead = samples.slice(loopFrom - gap, loopFrom);
    const end = samples.slice(samples.length - gap);
    const off = lead.map((x, i) => x - end[i]);
    expect(rms(off)).toBeLessThan(0.02 * rms(end));
  });
});

test('a stopped bell is rich in odd partials, and overblown while it begins', () => {
  const bell = whistleBell(400, RATE, random(1));
  const size = (partial: number, beginning: number) => {
    let [re, im] = [0, 0];
    for (let i = 0; i < 512; i++) {
      re += bell.read(i / 512, beginning) * Math.cos((2 * Math.PI * partial * i) / 512);
      im += bell.read(i / 512, beginning) * Math.sin((2 * Math.PI * partial * i) / 512);
    }
    return Math.hypot(re, im) / 256;
  };
  close(size(1, 0), 1, { abs: 1e-4, because: 'straight lines between 4096 points' });
  expect(size(1, 0)).toBeGreaterThan(3 * size(3, 0));
  for (const odd of [3, 5, 7]) expect(size(odd, 0)).toBeGreaterThan(size(odd - 1, 0));
  expect(size(3, 1)).toBeGreaterThan(size(1, 1));
});

test('a bell has no partials above 0.45 of the sample rate', () => {
  const bell = whistleBell(1900, 8000, random(1));
  const period = Array.from({ length: 512 }, (_, i) => bell.read(i / 512, 0));
  const second = period.reduce((sum, x, i) => sum + x * Math.cos((4 * Math.PI * i) / 512), 0);
  close(second, 0, { abs: 0.01, because: '3.8 kHz is above 3.6 kHz' });
});

test('more breath, more noise beside the same tone', () => {
  const noise = [0, 0.5, 1].map((breath) => {
    const { samples, loopFrom } = renderHeldWhistle({ ...WHISTLE, breath }, RATE);
    const loop = samples.slice(loopFrom);
    const span = { sampleRate: RATE, cyclic: true };
    return rms(filter(loop, section('highPass', 8000, 0.7, RATE), span));
  });
  expect(noise[1]).toBeGreaterThan(2 * noise[0]);
  expect(noise[2]).toBeGreaterThan(1.5 * noise[1]);
});

test('the same seed gives the same samples', () => {
  expect(WHISTLE_SOURCE.render(WHISTLE, 8000)).toEqual(WHISTLE_SOURCE.render(WHISTLE, 8000));
  expect(WHISTLE_SOURCE.render({ ...WHISTLE, seed: 1 }, 8000)).not.toEqual(
    WHISTLE_SOURCE.render(WHISTLE, 8000)
  );
});

test('a loop of another sample rate is as long and as loud', () => {
  const reference = rms(WHISTLE_SOURCE.render(WHISTLE, 48000));
  for (const rate of [16000, 44100, 96000]) {
    const loop = WHISTLE_SOURCE.render(WHISTLE, rate);
    close(loop.length / rate, 5.6, { abs: 1 / rate, because: 'whole samples' });
    close(rms(loop), reference, { rel: 0.1, because: 'another noise, and less treble at a low rate' });
  }
});

test('marks are its notes by name, lowest first', () => {
  expect(WHISTLE_SOURCE.marks({ ...WHISTLE, chord: [3, 0] })).toEqual([
    { frequency: 440, name: 'A4', harmonics: 3 },
    { frequency: 440 * 2 ** 0.25, name: 'C5', harmonics: 3 }
  ]);
});

test('refuses notes out of range with a sentence', () => {
  expect(() => WHISTLE_SOURCE.render({ ...WHISTLE, chord: [] }, RATE)).toThrow(
    new RangeError('pitches must have 1 … 6 notes, got 0')
  );
});

test('the valve follows the cord and shuts', () => {
  const curve = valveCurve(1, [{ from: 0.1, to: 0.5 }]);
  expect(curve.length).toBe(1001);
  expect(Math.max(...curve.subarray(0, 100))).toBe(0);
  close(curve[499], 1, { abs: 1e-3, because: 'fourteen time constants later' });
  for (let tick = 101; tick < 500; tick++) expect(curve[tick]).toBeGreaterThanOrEqual(curve[tick - 1]);
  expect(curve[1000]).toBeLessThan(0.01);
});
