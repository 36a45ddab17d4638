import { expect, test } from 'vitest';
import { HORN_PRESETS } from '../../../../src/lib/sounds/signals/horn.js';
import { renderHeldHorn } from '../../../../src/lib/sounds/signals/render-held-horn.js';
import { rms } from '../../../helpers/levels.js';
import { close } from '../../../helpers/close.js';
import { seam } from '../../../helpers/seam.js';
import { knobEnds } from './knob-ends.js';
import { HORN_KNOBS } from '../../../../src/lib/sounds/signals/horn.js';

const RATE = 48000;
const { samples, loopFrom } = renderHeldHorn(HORN_PRESETS[0], RATE);
const loop = samples.subarray(loopFrom);

test('the held chord goes round without a seam', () => {
  const { step, slope, treble } = seam(loop, RATE);
  expect(Math.max(step, slope, treble)).toBeLessThan(1);
});

test('the attack runs into the loop: what comes before it is what ends it', () => {
  // Bells and noise are the same by construction; filters and echoes have had 0.15 s more than they last.
  const before = Math.round(0.05 * RATE);
  for (let i = 1; i < before; i += 17)
    close(samples[loopFrom - i], samples[samples.length - i], {
      abs: 3e-5,
      because: 'filters settle to −90 dB'
    });
});

test('it begins with air alone, and speaks fully within the time of its attack and a little', () => {
  const piece = (from: number, until: number) => rms(samples.subarray(from * RATE, until * RATE));
  expect(samples[0]).toBeLessThan(1e-3);
  expect(piece(0, 0.03)).toBeLessThan(0.25 * rms(loop));
  expect(piece(0, 0.03)).toBeGreaterThan(0.005 * rms(loop));
  close(piece(0.4, 0.6), rms(loop), { rel: 0.12, because: 'bells beat' });
});

test('a slower attack speaks later', () => {
  const early = (attack: number) =>
    rms(renderHeldHorn({ ...HORN_PRESETS[0], attack }, 8000).samples.subarray(0, 1600));
  expect(early(0.6)).toBeLessThan(0.5 * early(0.05));
});

test('every knob at both ends renders finite sound', () => {
  for (const { what, sound } of knobEnds(HORN_KNOBS, HORN_PRESETS[1])) {
    const ride = renderHeldHorn(sound, 8000);
    const held = rms(ride.samples.subarray(ride.loopFrom));
    expect(held > 0.02 && held < 0.5, `${what}: ${held}`).toBe(true);
    expect(ride.loopFrom).toBeLessThan(2 * 8000);
  }
});

test('values out of range are refused', () => {
  expect(() => renderHeldHorn({ ...HORN_PRESETS[0], chord: [] }, RATE)).toThrow(
    new RangeError('notes must have 1 … 6 notes, got 0')
  );
  expect(() => renderHeldHorn(HORN_PRESETS[0], 7999)).toThrow(
    'sample rate must be within 8000 … 192000 Hz, got 7999'
  );
});
