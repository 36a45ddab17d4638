import { expect, test } from 'vitest';
import { addRing } from '../../../../src/lib/sounds/signals/ring.js';
import { close } from '../../../helpers/close.js';

const rate = 8000;
const mode = { frequency: 440, decay: 0.5, level: 0.3 };
const exact = (t: number) => (t < 0 ? 0 : 0.3 * 10 ** ((-3 * t) / 0.5) * Math.sin(2 * Math.PI * 440 * t));

test('it is the decaying sine of its formula, struck between samples', () => {
  const signal = new Float32Array(rate);
  addRing(signal, { sampleRate: rate, cyclic: false }, 100.25, mode);
  for (let i = 0; i < 4000; i += 7)
    close(signal[i], exact((i - 100.25) / rate), { abs: 1e-6, because: 'single precision' });
});

test('in a loop it goes round as often as it sounds', () => {
  const length = 1000;
  const loop = new Float32Array(length);
  addRing(loop, { sampleRate: rate, cyclic: true }, 900, mode);
  const times = (i: number) => [0, 1, 2, 3, 4, 5, 6].map((n) => exact((i - 900 + n * length) / rate));
  for (let i = 0; i < length; i += 13)
    close(
      loop[i],
      times(i).reduce((a, b) => a + b),
      { abs: 1e-4, because: 'followed down to −80 dB' }
    );
});

test('a straight signal has nothing before its start and nothing behind its end', () => {
  const signal = new Float32Array(50);
  addRing(signal, { sampleRate: rate, cyclic: false }, -10, mode);
  close(signal[20], exact(30 / rate), { abs: 1e-7, because: 'single precision' });
  expect(signal).toHaveLength(50);
});

test('what lies above 0.45 of the sample rate is left out', () => {
  const signal = new Float32Array(100);
  addRing(signal, { sampleRate: rate, cyclic: false }, 0, { ...mode, frequency: 3601 });
  expect(signal.every((x) => x === 0)).toBe(true);
});
