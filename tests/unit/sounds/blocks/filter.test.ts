import { expect, test } from 'vitest';
import { filter, section } from '../../../../src/lib/sounds/blocks/filter.js';
import { random } from '../../../../src/lib/sounds/blocks/random.js';
import { close } from '../../../helpers/close.js';

const RATE = 48000;

/** Gain of a section at a frequency, from a looped sine in its steady state. */
function gainDb(kind: 'lowPass' | 'highPass' | 'bandPass', frequency: number, q: number, at: number): number {
  const length = RATE / 10;
  const sine = Float32Array.from({ length }, (_, i) => Math.sin((2 * Math.PI * at * i) / RATE));
  const out = filter(sine, section(kind, frequency, q, RATE), { sampleRate: RATE, cyclic: true });
  return 10 * Math.log10(out.reduce((sum, x) => sum + x * x, 0) / (length / 2));
}

test('low-pass and high-pass have the gain Q at their frequency and 0 dB where they pass', () => {
  const because = 'single precision samples';
  for (const q of [0.5, 2]) {
    for (const kind of ['lowPass', 'highPass'] as const)
      close(gainDb(kind, 1000, q, 1000), 20 * Math.log10(q), { abs: 1e-3, because });
    close(gainDb('lowPass', 1000, q, 10), 0, { abs: 2e-3, because });
  }
  close(gainDb('highPass', 100, 0.7, 100 * 2), 20 * Math.log10(4 / Math.hypot(3, 2 / 0.7)), {
    abs: 0.01,
    because: 'analogue formula; the bilinear transform bends nothing at 100 Hz'
  });
});

test('band-pass peaks at 0 dB and falls as 1/√(1 + Q²(f/f0 − f0/f)²)', () => {
  const because = 'analogue formula; the bilinear transform bends little at 1 kHz and 48 kHz';
  close(gainDb('bandPass', 1000, 5, 1000), 0, { abs: 1e-3, because });
  for (const f of [910, 1100, 500]) {
    const expected = -10 * Math.log10(1 + (5 * (f / 1000 - 1000 / f)) ** 2);
    close(gainDb('bandPass', 1000, 5, f), expected, { abs: 0.04, because });
  }
});

test('the output is the steady state: the loop three times over gives its third turn again', () => {
  const chance = random(5);
  const loop = Float32Array.from({ length: 3000 }, () => chance.gaussian());
  const three = new Float32Array(9000).map((_, i) => loop[i % 3000]);
  const resonator = section('bandPass', 300, 8, RATE);
  const once = filter(loop, resonator, { sampleRate: RATE, cyclic: true });
  const thrice = filter(three, resonator, { sampleRate: RATE, cyclic: true });
  for (let i = 0; i < 3000; i += 7)
    close(once[i], thrice[6000 + i], { abs: 1e-6, because: 'what is left after half a second' });
});

test('with a sum, the output is added to it', () => {
  const loop = Float32Array.of(1, -1, 1, -1);
  const sum = Float32Array.of(5, 5, 5, 5);
  const out = filter(loop, section('highPass', 1000, 0.7, RATE), { sampleRate: RATE, cyclic: true }, 2, sum);
  expect(out).toBe(sum);
  close(sum[0] - 5, 2, { abs: 1e-5, because: 'a high-pass passes half the sample rate' });
});
