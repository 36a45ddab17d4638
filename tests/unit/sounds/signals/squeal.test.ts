import { expect, test } from 'vitest';
import { type Squeal, SQUEAL_PRESETS } from '../../../../src/lib/sounds/signals/squeal.js';
import { SQUEAL_SOURCE } from '../../../../src/lib/sounds/signals/squeal-source.js';
import { RealFft } from '../../../../src/lib/numeric/fft.js';

const RATE = 16000;
const SIZE = 2048;
const render = (change: Partial<Squeal> = {}) =>
  SQUEAL_SOURCE.render({ ...SQUEAL_PRESETS[0], ...change }, RATE);

/** Frequency of the strongest line above 500 Hz, and how far it stands above the mean there, in one short stretch. */
function strongest(loop: Float32Array, from: number): { frequency: number; above: number } {
  const windowed = loop
    .subarray(from, from + SIZE)
    .map((x, i) => x * Math.sin((Math.PI * (i + 0.5)) / SIZE) ** 2);
  const { re, im } = new RealFft(SIZE).forward(windowed);
  const first = Math.ceil((500 * SIZE) / RATE);
  const power = Array.from(re, (x, k) => (k < first ? 0 : x ** 2 + im[k] ** 2));
  const top = Math.max(...power);
  const mean = power.reduce((a, b) => a + b) / power.length;
  return { frequency: (power.indexOf(top) * RATE) / SIZE, above: 10 * Math.log10(top / mean) };
}

const stretches = (loop: Float32Array) =>
  Array.from({ length: 70 }, (_, n) => strongest(loop, Math.round((0.6 + 0.07 * n) * RATE)));

test('it squeals: for most of the time one narrow line stands out, and it jumps between several', () => {
  const lines = stretches(render({ roughness: 0 })).filter(({ above }) => above > 20);
  expect(lines.length).toBeGreaterThan(35);
  const semitones = new Set(lines.map(({ frequency }) => Math.round(12 * Math.log2(frequency / 2100))));
  expect(semitones.size).toBeGreaterThanOrEqual(3);
});

test('the tones follow the pitch', () => {
  const middle = (pitch: number) => {
    const lines = stretches(render({ pitch, roughness: 0 })).filter(({ above }) => above > 20);
    return lines.map(({ frequency }) => frequency).sort((a, b) => a - b)[Math.floor(lines.length / 2)];
  };
  const ratio = middle(2400) / middle(1600);
  expect(ratio).toBeGreaterThan(1.45);
  expect(ratio).toBeLessThan(1.55);
});

test('roughness blurs them', () => {
  const mean = (roughness: number) =>
    stretches(render({ roughness })).reduce((sum, { above }) => sum + above, 0) / 70;
  expect(mean(0)).toBeGreaterThan(mean(1) + 4);
});

test('it rubs, stops and is still: silence at the beginning, and soon after the stop', () => {
  const loop = render();
  const level = (from: number, until: number) => {
    const piece = loop.subarray(from * RATE, until * RATE);
    return 10 * Math.log10(piece.reduce((sum, x) => sum + x * x, 0) / piece.length);
  };
  expect(level(1, 6)).toBeGreaterThan(-35);
  expect(level(7.3, 7.5)).toBeLessThan(level(1, 6) - 50);
  expect(level(0, 0.14)).toBeLessThan(level(1, 6) - 50);
});
