import { expect, test } from 'vitest';
import { measureSound } from '../../../src/lib/listening/measure-sound.js';
import { loopLoudness } from '../../../src/lib/listening/loudness.js';
import { powerSpectrum, WINDOW } from '../../../src/lib/listening/power-spectrum.js';
import { random } from '../../../src/lib/sounds/blocks/random.js';
import { close } from '../../helpers/close.js';

const RATE = 48000;
const sum = (values: Float64Array) => values.reduce((a, b) => a + b, 0);
function sine(frequency: number, length: number, level = 1): Float32Array {
  return Float32Array.from({ length }, (_, i) => level * Math.sin((2 * Math.PI * frequency * i) / RATE));
}

test('the bins of a sine add up to its mean square, at its frequency', () => {
  for (const frequency of [100, 997, 12003]) {
    const { power, binWidth } = powerSpectrum(sine(frequency, RATE), RATE);
    close(sum(power), 0.5, { rel: 1e-4, because: 'a sine that is stationary' });
    const near = power.slice(Math.round(frequency / binWidth) - 3, Math.round(frequency / binWidth) + 4);
    close(sum(near), 0.5, { rel: 0.002, because: 'side lobes of the Hann window' });
  }
});

test('DC and half the sample rate count once', () => {
  close(sum(powerSpectrum(new Float32Array(20000).fill(0.5), RATE).power), 0.25, {
    rel: 1e-6,
    because: 'single precision'
  });
  const fast = Float32Array.from({ length: 20000 }, (_, i) => (i % 2 ? -0.5 : 0.5));
  close(sum(powerSpectrum(fast, RATE).power), 0.25, { rel: 1e-6, because: 'single precision' });
});

test('white noise is flat', () => {
  const chance = random(11);
  const noise = Float32Array.from({ length: 60 * RATE }, () => chance.gaussian());
  const { power } = powerSpectrum(noise, RATE);
  const bin = 1 / (WINDOW / 2);
  for (const [from, to] of [
    [1, 200],
    [1000, 1200],
    [3800, 4000]
  ])
    close(sum(power.slice(from, to)) / (to - from), bin, { rel: 0.02, because: 'five standard errors' });
});

test('a loop gives the same as its repetitions, and windows go round its seam', () => {
  const chance = random(12);
  const loop = Float32Array.from({ length: 3 * 4096 }, () => chance.gaussian());
  const long = new Float32Array(loop.length * 4).map((_, i) => loop[i % loop.length]);
  const a = powerSpectrum(loop, RATE).power;
  const b = powerSpectrum(long, RATE).power;
  a.forEach((x, k) => close(x, b[k], { rel: 1e-9, abs: 1e-15, because: 'the same windows' }));
});

test('loops shorter than a window are taken several times', () => {
  const { power } = powerSpectrum(sine(1000, 480), RATE);
  close(sum(power), 0.5, { rel: 1e-3, because: 'ten whole periods' });
});

test('measureSound brings loudness, peak and spectrum together', () => {
  const sound = sine(440, RATE, 0.25);
  const figures = measureSound(sound, RATE);
  expect(figures.loudness).toBe(loopLoudness(sound, RATE));
  close(figures.peak, 0.25, { abs: 1e-4, because: 'samples near the crest' });
  expect(figures.power).toEqual(powerSpectrum(sound, RATE).power);
  expect(figures.binWidth).toBe(RATE / WINDOW);
});

test('an empty loop is refused', () => {
  expect(() => powerSpectrum(new Float32Array(0), RATE)).toThrow('a loop must have at least 1 sample, got 0');
});
