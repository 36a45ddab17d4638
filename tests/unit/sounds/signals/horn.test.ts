import { expect, test } from 'vitest';
import { type Horn, HORN_PRESETS } from '../../../../src/lib/sounds/signals/horn.js';
import { hornBells, mistuning } from '../../../../src/lib/sounds/signals/horn-bells.js';
import { notePitch } from '../../../../src/lib/sounds/blocks/note-pitch.js';
import { HORN_SOURCE } from '../../../../src/lib/sounds/signals/horn-source.js';

const RATE = 16000;
const horn = (change: Partial<Horn> = {}): Horn => ({ ...HORN_PRESETS[0], ...change });
const loop = HORN_SOURCE.render(horn(), RATE);
const level = (from: number, until: number) => {
  const piece = loop.subarray(from * RATE, until * RATE);
  return 10 * Math.log10(piece.reduce((sum, x) => sum + x * x, 0) / piece.length);
};

test('it gives long, long, short, long, with pauses in which only echoes are heard', () => {
  const blast = level(0.6, 1.3);
  for (const [from, until] of [
    [2.4, 3.1],
    [3.95, 4.03],
    [5, 6]
  ])
    expect(Math.abs(level(from, until) - blast)).toBeLessThan(3);
  for (const from of [1.75, 3.5, 4.4]) expect(level(from, from + 0.08)).toBeLessThan(blast - 15);
  expect(level(6.95, 7)).toBeLessThan(blast - 40);
});

test('bells speak one after another within the attack, in an order of their own', () => {
  const bells = hornBells(horn({ attack: 0.4 }), RATE);
  const delays = bells.map(({ delay }) => delay).sort((a, b) => a - b);
  delays.forEach((delay, i) => expect(delay).toBeCloseTo(0.075 * i, 9));
  bells.forEach(({ delay, rise }) => expect(delay + rise).toBeLessThan(0.3 + 0.03 + 0.7 * 0.4 + 1e-9));
});

test('mistuning is spread evenly over the knob, none of it for a single bell or a spread of 0', () => {
  const sorted = (change: Partial<Horn>) => mistuning(horn(change)).sort((a, b) => a - b);
  sorted({ spread: 12, chord: [0, 4, 7, 12] }).forEach((cents, i) => expect(cents).toBeCloseTo(4 * i - 6, 9));
  expect(sorted({ spread: 20, chord: [5] })).toEqual([0]);
  expect(mistuning(horn({ spread: 0 })).every((x) => x === 0)).toBe(true);
});

test('an octave is a factor of two, a semitone its twelfth root', () => {
  expect(notePitch(12)).toBe(880);
  expect(notePitch(1) ** 12 / 440 ** 12).toBeCloseTo(2, 12);
});

test('a bell begins off its pitch and comes to it', () => {
  // Phase of the fundamental in stretches of five periods: what it turns more than 440 Hz does, in cents.
  const single = HORN_SOURCE.render(horn({ chord: [0], air: 0, spread: 0, attack: 0.4 }), RATE);
  const stretch = Math.round((5 * RATE) / 440);
  const phase = (t: number) => {
    let [re, im] = [0, 0];
    for (let i = 0; i < stretch; i++) {
      const n = Math.round(t * RATE) + i;
      const x = single[n] * Math.sin((Math.PI * (i + 0.5)) / stretch) ** 2;
      re += x * Math.cos((2 * Math.PI * 440 * n) / RATE);
      im -= x * Math.sin((2 * Math.PI * 440 * n) / RATE);
    }
    return Math.atan2(im, re) / (2 * Math.PI);
  };
  const cents = (t: number, over: number) => {
    const turns = phase(t + over) - phase(t);
    return 1200 * Math.log2(1 + (turns - Math.round(turns)) / (440 * over));
  };
  const [{ scoop, rise }] = hornBells(horn({ chord: [0], attack: 0.4 }), RATE);
  const early = cents(0.1 + 0.3 * rise, 0.02);
  expect(Math.sign(early)).toBe(Math.sign(scoop));
  expect(Math.abs(early)).toBeGreaterThan(0.3 * Math.abs(scoop));
  expect(Math.abs(cents(0.8, 0.4))).toBeLessThan(3);
});
