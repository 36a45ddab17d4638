import { describe, expect, test } from 'vitest';
import { loopLoudness } from '../../../../src/lib/listening/loudness.js';
import { type MovingSound, movingKind } from '../../../../src/lib/sounds/kinds.js';
import { settledAt } from '../../../../src/lib/sounds/motion/motion.js';
import { MACHINES, usualSound } from '../../../../src/lib/sounds/roster.js';
import { aligningGain, ALIGNED, SoundBank } from '../../../../src/lib/workers/sound/sound-bank.js';
import { close } from '../../../helpers/close.js';

const RATE = 16000;
const bank = new SoundBank();
const [machine] = MACHINES;

/** Level in dB of a stretch of a sound. */
function level(samples: Float32Array, from: number, to: number): number {
  const stretch = samples.subarray(Math.round(from * RATE), Math.round(to * RATE));
  return 10 * Math.log10(stretch.reduce((sum, x) => sum + x * x, 0) / stretch.length);
}

test('a machine is aligned at the middle of its lever and keeps its own steps from there', () => {
  const at = (notch: number) => loopLoudness(bank.loop({ ...machine, notch }, RATE), RATE);
  close(at(4), ALIGNED, { abs: 0.01, because: 'single precision' });
  expect(at(0)).toBeLessThan(ALIGNED - 4);
  expect(at(8)).toBeGreaterThan(ALIGNED + 3);
});

test('what is handed out is the taker’s own', () => {
  const taken = bank.loop(machine, RATE);
  const copy = taken.slice();
  taken.fill(7);
  expect(bank.loop(machine, RATE)).toEqual(copy);
});

test('the name, the cord and nothing else leave a machine’s sound as it is', () => {
  const before = bank.loop(machine, RATE);
  expect(bank.loop({ ...machine, name: 'mine', signal: 'whistle' }, RATE)).toEqual(before);
  expect(bank.loop({ ...machine, seed: machine.seed + 1 }, RATE)).not.toEqual(before);
});

test.each(['diesel', 'steam', 'electric'] as const)(
  'a %s rides to the loop of its notch, at its level',
  (kind) => {
    const sound = { ...(usualSound(kind) as MovingSound), notch: 7 };
    const from = settledAt(movingKind(sound).target({ ...sound, notch: 1 }));
    const { samples, loopFrom } = bank.ride(sound, from, RATE);
    expect(samples.slice(loopFrom)).toEqual(bank.loop(sound, RATE));
    const low = bank.loop({ ...sound, notch: 1 }, RATE);
    close(level(samples, 0, 0.15), level(low, 0, low.length / RATE), {
      abs: 5,
      because: 'a short stretch of an uneven sound, which has begun to labour'
    });
  }
);

test('the cord’s signals stand 3 LU above the machines, each a different one', () => {
  const signals = ['three-note horn', 'five-note horn', 'whistle'] as const;
  const loops = signals.map((signal) => {
    const { samples, loopFrom } = bank.blast(signal, RATE);
    expect(loopFrom).toBeGreaterThan(0);
    return samples.slice(loopFrom);
  });
  for (const loop of loops)
    close(loopLoudness(loop, RATE), ALIGNED + 3, { abs: 0.05, because: 'single precision' });
  expect(loops[0]).not.toEqual(loops[1]);
});

describe('a run past', () => {
  const piece = bank.loop({ ...machine, runPast: true }, RATE);

  test('lasts half a minute: idle, up, horn, shut off, idle', () => {
    close(piece.length / RATE, 30, { abs: 0.5, because: 'it ends with a pattern of the engine' });
    expect(level(piece, 10, 12) - level(piece, 0, 2.5)).toBeGreaterThan(6);
    expect(level(piece, 13.2, 14.4)).toBeGreaterThan(level(piece, 14.8, 15.2) + 1);
    close(level(piece, 28, 29.9), level(piece, 0, 2.5), { abs: 2, because: 'both are idle' });
  });

  test('begins and ends in the idle of the same machine', () => {
    const idle = bank.loop({ ...machine, notch: 0 }, RATE);
    close(level(piece, 0, 2.5), level(idle, 0, 5), { abs: 1.5, because: 'an uneven idle, other stretches' });
  });
});

test('what is all but silent is not made a sound of', () => {
  expect(aligningGain(new Float32Array(RATE), RATE)).toBe(1);
  const faint = Float32Array.from({ length: RATE }, (_, i) => 1e-3 * Math.sin(i / 2));
  expect(aligningGain(faint, RATE)).toBeLessThanOrEqual(100);
});
