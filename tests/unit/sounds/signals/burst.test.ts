import { expect, test } from 'vitest';
import { addBurst } from '../../../../src/lib/sounds/signals/burst.js';
import { close } from '../../../helpers/close.js';

const span = { sampleRate: 8000, cyclic: false };
const exact = (t: number) => (t < 0 ? 0 : 0.5 * Math.exp(-t / 0.01) * (1 - Math.exp(-t / 0.002)));

test('it is the noise within the envelope of its formula', () => {
  const signal = new Float32Array(800);
  addBurst(signal, span, new Float32Array(800).fill(1), 40.5, 0.002, 0.01, 0.5);
  for (let i = 0; i < 700; i += 3)
    close(signal[i], exact((i - 40.5) / 8000), { abs: 1e-4, because: 'followed for ten time constants' });
});

test('in a loop it goes round with the noise of where it is', () => {
  const loop = new Float32Array(400);
  const noise = Float32Array.from({ length: 400 }, (_, i) => (i < 100 ? 2 : 1));
  addBurst(loop, { ...span, cyclic: true }, noise, 380, 0.002, 0.01, 0.5);
  close(loop[390], exact(10 / 8000), { abs: 1e-6, because: 'single precision' });
  close(loop[30], 2 * exact(50 / 8000), { abs: 1e-6, because: 'single precision' });
});

test('a straight signal takes what lies in it', () => {
  const signal = new Float32Array(20);
  addBurst(signal, span, new Float32Array(20).fill(1), -5, 0.002, 0.01, 0.5);
  close(signal[0], exact(5 / 8000), { abs: 1e-6, because: 'single precision' });
  expect(signal).toHaveLength(20);
});
