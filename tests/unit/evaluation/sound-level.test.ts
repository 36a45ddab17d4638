import { expect, test } from 'vitest';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { soundLevelDb, zeroAtListenerDb } from '../../../src/lib/evaluation/sound-level.js';
import { close } from '../../helpers/close.js';

const AIR = { temperatureC: 20 };
const flat = (gain: number, drive = 1) => ({
  drive,
  respond: (frequency: Float64Array) => ({
    frequency,
    re: new Float64Array(frequency.length).fill(gain),
    im: new Float64Array(frequency.length)
  })
});
const sound = { power: Float64Array.of(0, 1, 3, 0.5, 0.2), binWidth: 100 };

test('0 dB at the listener is half-space sensitivity at the voltage and the distance (Small 1972)', () => {
  const { motor, cone } = SPEAKERS.oval;
  if (cone.shape !== 'ellipse') throw new Error('the oval has an oval cone');
  const area = (Math.PI / 4) * cone.length * cone.width;
  const pascals = (1.2041 * area * motor.bl * 2) / (2 * Math.PI * motor.mms * motor.re * 0.5);
  close(zeroAtListenerDb(SPEAKERS.oval, AIR, 2, { distance: 0.5 }), 20 * Math.log10(pascals / 20e-6), {
    abs: 0.01,
    because: 'density of air in four digits'
  });
  close(
    zeroAtListenerDb(SPEAKERS.oval, AIR, 2, {}) - zeroAtListenerDb(SPEAKERS.oval, AIR, 2, { distance: 2 }),
    20 * Math.log10(2),
    { abs: 1e-9, because: 'far away is told for 1 m' }
  );
});

test('a mount that lets all through at half the amplitude is 6 dB below that, whatever the sound', () => {
  close(soundLevelDb(flat(0.5), sound, 80), 80 - 20 * Math.log10(2), { abs: 1e-9, because: 'arithmetic' });
  close(soundLevelDb(flat(0.5), { power: sound.power.map((x) => 9 * x), binWidth: 100 }, 80), 73.979, {
    abs: 1e-3,
    because: 'the drive is the sound’s own rms'
  });
});

test('what an answer took in to be written against another speaker is taken out again', () => {
  close(soundLevelDb(flat(0.5 * 3, 3), sound, 80), soundLevelDb(flat(0.5), sound, 80), {
    abs: 1e-9,
    because: 'a factor and its inverse'
  });
});

test('silence has no level', () => {
  expect(soundLevelDb(flat(1), { power: new Float64Array(5), binWidth: 100 }, 80)).toBe(-Infinity);
});
