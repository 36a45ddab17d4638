import { expect, test } from 'vitest';
import { gatedLoudness } from '../../../src/lib/listening/gated-loudness.js';
import { integratedLoudness, loopLoudness } from '../../../src/lib/listening/loudness.js';
import { random } from '../../../src/lib/sounds/blocks/random.js';
import { close } from '../../helpers/close.js';

const RATE = 48000;
function noise(seconds: number, seed = 1, rate = RATE): Float32Array {
  const chance = random(seed);
  return Float32Array.from({ length: Math.round(seconds * rate) }, () => 0.1 * chance.gaussian());
}
function repeated(loop: Float32Array, times: number): Float32Array {
  return new Float32Array(loop.length * times).map((_, i) => loop[i % loop.length]);
}

test('twice the amplitude is 6.02 LU more', () => {
  const sound = noise(3);
  const because = 'single precision';
  const more = 20 * Math.log10(2);
  const twice = sound.map((x) => 2 * x);
  close(integratedLoudness(twice, RATE) - integratedLoudness(sound, RATE), more, { abs: 1e-6, because });
  close(loopLoudness(twice, RATE) - loopLoudness(sound, RATE), more, { abs: 1e-6, because });
});

test('a loop is as loud as its many repetitions heard once', () => {
  for (const seconds of [0.13, 0.4, 1, 2.537]) {
    const loop = noise(seconds, 4);
    const long = repeated(loop, Math.ceil(60 / seconds));
    close(loopLoudness(loop, RATE), integratedLoudness(long, RATE), {
      abs: 0.02,
      because: 'the beginning from rest, and where blocks begin'
    });
  }
});

test('a loop is as loud wherever it is cut', () => {
  const loop = noise(2.5);
  for (let i = 0; i < loop.length; i++) loop[i] *= i < loop.length / 2 ? 1 : 0.05;
  const turned = (by: number) => loop.map((_, i) => loop[(i + by) % loop.length]);
  // Moved by whole steps of blocks the same blocks are formed, also those across the seam.
  close(loopLoudness(turned(0.3 * RATE), RATE), loopLoudness(loop, RATE), { abs: 1e-3, because: 'settling' });
  close(loopLoudness(turned(12345), RATE), loopLoudness(loop, RATE), {
    abs: 0.25,
    because: 'gating of other blocks'
  });
});

test('a loop of one turn of a low tone has no settling in it', () => {
  const hum = Float32Array.from({ length: RATE }, (_, i) => 0.5 * Math.cos((2 * Math.PI * 20 * i) / RATE));
  close(loopLoudness(hum, RATE), integratedLoudness(repeated(hum, 30), RATE), {
    abs: 0.01,
    because: 'start from rest'
  });
});

test('the relative gate leaves quiet stretches out', () => {
  const loud = noise(4, 1);
  const quiet = noise(4, 2).map((x) => 0.01 * x);
  const both = new Float32Array(8 * RATE);
  both.set(loud);
  both.set(quiet, 4 * RATE);
  // 37 whole blocks and six that straddle a change by a quarter, half and three quarters: 40/43. Without the gate it
  // would be 40/80, 2.7 LU less.
  const expected = 10 * Math.log10(40 / 43);
  close(loopLoudness(both, RATE) - loopLoudness(loud, RATE), expected, { abs: 0.03, because: 'chance' });
});

test('gating follows equations 4 to 7', () => {
  const power = (lufs: number) => 10 ** ((lufs + 0.691) / 10);
  const because = 'rounding';
  close(gatedLoudness(Float64Array.of(power(-23))), -23, { abs: 1e-9, because });
  expect(gatedLoudness(Float64Array.of(power(-70.1), 0))).toBe(-Infinity);
  expect(gatedLoudness(Float64Array.of())).toBe(-Infinity);
  // Mean of −20 and −40 is −22.97: the gate stands at −32.97 and drops the second.
  close(gatedLoudness(Float64Array.of(power(-20), power(-40))), -20, { abs: 1e-9, because });
  // Mean of −20 and −30 is −22.60, gate −32.60: both stay.
  close(gatedLoudness(Float64Array.of(power(-20), power(-30))), -22.596, { abs: 1e-3, because });
});

test('silence has the loudness −Infinity', () => {
  expect(loopLoudness(new Float32Array(RATE), RATE)).toBe(-Infinity);
  expect(integratedLoudness(new Float32Array(RATE), RATE)).toBe(-Infinity);
});

test('rates with no whole number of samples in 100 ms work', () => {
  const sound = noise(3, 1, 11025);
  close(loopLoudness(sound, 11025), integratedLoudness(repeated(sound, 10), 11025), {
    abs: 0.02,
    because: 'settling'
  });
});

test('bad input is refused', () => {
  expect(() => loopLoudness(new Float32Array(0), RATE)).toThrow(RangeError);
  expect(() => loopLoudness(noise(1), 1000)).toThrow('sample rate');
  expect(() => integratedLoudness(noise(0.3), RATE)).toThrow('at least 0.4 s to have a loudness, got 0.3');
  expect(() => integratedLoudness([noise(1), noise(2)], RATE)).toThrow('same length');
  expect(() => integratedLoudness([noise(1), noise(1)], RATE, [1])).toThrow(
    'weights must be 2 numbers, got 1'
  );
  expect(() => integratedLoudness([], RATE)).toThrow(RangeError);
});
