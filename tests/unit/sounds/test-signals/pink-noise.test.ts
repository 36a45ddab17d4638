import { expect, test } from 'vitest';
import { bandLevels } from '../../../../src/lib/listening/band-levels.js';
import { powerSpectrum } from '../../../../src/lib/listening/power-spectrum.js';
import { RealFft } from '../../../../src/lib/numeric/fft.js';
import { thirdOctaveBands } from '../../../../src/lib/numeric/third-octave-bands.js';
import { renderPinkNoise } from '../../../../src/lib/sounds/test-signals/pink-noise.js';
import { close } from '../../../helpers/close.js';
import { seam } from '../../../helpers/seam.js';

const RATE = 48000;
const noise = renderPinkNoise(5, RATE, 1);

test('RMS is −20 dBFS', () => {
  const rms = Math.sqrt(noise.reduce((sum, x) => sum + x * x, 0) / noise.length);
  close(rms, 0.1, { rel: 1e-5, because: 'single precision' });
});

test('the line spectrum of the loop falls 3.01 dB an octave from 20 Hz to 20 kHz, and nothing lies outside', () => {
  const { re, im } = new RealFft(noise.length).forward(noise);
  const level = (frequency: number) => {
    const k = Math.round((frequency * noise.length) / RATE);
    return { db: 20 * Math.log10(Math.hypot(re[k], im[k])), exact: (k * RATE) / noise.length };
  };
  const reference = level(1000);
  for (const frequency of [21, 40, 250, 4000, 12345, 19900]) {
    const here = level(frequency);
    const expected = -10 * Math.log10(here.exact / reference.exact);
    close(here.db - reference.db, expected, { abs: 0.01, because: 'single precision' });
  }
  for (const frequency of [0, 5, 19, 20100, 23000])
    expect(level(frequency).db).toBeLessThan(reference.db - 60);
});

test('every third octave has the same power', () => {
  const { power, binWidth } = powerSpectrum(noise, RATE);
  const levels = bandLevels(power, binWidth, thirdOctaveBands(100, 16000));
  const mean = levels.reduce((a, b) => a + b) / levels.length;
  for (const level of levels)
    close(level, mean, { abs: 0.5, because: 'spread of the narrowest band over 5 s' });
});

test('it loops without a seam', () => {
  const { step, slope, treble } = seam(noise, RATE);
  expect(Math.max(step, slope, treble)).toBeLessThan(1);
});

test('the loop is a power of two long, nearest to what was asked for, at any rate', () => {
  expect(noise.length).toBe(2 ** 18);
  expect(renderPinkNoise(1, 44100, 1).length).toBe(2 ** 15);
  expect(renderPinkNoise(1, 8000, 1).length).toBe(2 ** 13);
});

test('the seed decides', () => {
  expect(renderPinkNoise(1, RATE, 3)).toEqual(renderPinkNoise(1, RATE, 3));
  expect(renderPinkNoise(1, RATE, 3)).not.toEqual(renderPinkNoise(1, RATE, 4));
});

test('values out of range are refused', () => {
  expect(() => renderPinkNoise(0, RATE, 1)).toThrow('duration must be within 0.1 … 60 s, got 0');
  expect(() => renderPinkNoise(1, NaN, 1)).toThrow('sample rate must be within 8000 … 192000 Hz, got NaN');
});
