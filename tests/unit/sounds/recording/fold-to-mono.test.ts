import { expect, test } from 'vitest';
import { foldToMono } from '../../../../src/lib/sounds/recording/fold-to-mono.js';
import { random } from '../../../../src/lib/sounds/blocks/random.js';
import { close } from '../../../helpers/close.js';

const COUNT = 50_000;
function noise(seed: number, size = 0.1): Float32Array {
  const chance = random(seed);
  return Float32Array.from({ length: COUNT }, () => size * chance.gaussian());
}
const scaled = (samples: Float32Array, by: number) => samples.map((x) => by * x);

test('samples are the mean of the channels', () => {
  const { samples } = foldToMono([Float32Array.of(1, 0.5, 0), Float32Array.of(0, 0.5, -1)]);
  expect([...samples]).toEqual([0.5, 0.5, -0.5]);
});

test('one channel, or the same on two or six, cancels nothing', () => {
  for (const count of [1, 2]) {
    const { cancellationDb } = foldToMono(Array.from({ length: count }, () => noise(1)));
    close(cancellationDb, 0, { abs: 1e-4, because: 'single precision' });
  }
  // Six equal channels add up better than unrelated ones: less than 0 dB.
  close(foldToMono(Array.from({ length: 6 }, () => noise(1))).cancellationDb, -4.77, {
    abs: 0.01,
    because: '10·log10(6) − 3.01 dB, two decimals'
  });
});

test('unrelated channels score 3.01 dB, however many and however loud', () => {
  const because = 'correlation left by chance in 50 000 samples';
  close(foldToMono([noise(1), noise(2)]).cancellationDb, 3.01, { abs: 0.1, because });
  close(foldToMono([noise(1), noise(2, 0.01)]).cancellationDb, 3.01, { abs: 0.1, because });
  close(foldToMono([1, 2, 3, 4, 5, 6].map((s) => noise(s))).cancellationDb, 3.01, { abs: 0.1, because });
});

test('opposite channels cancel by how equal they are', () => {
  const left = noise(1);
  expect(foldToMono([left, scaled(left, -1)]).cancellationDb).toBe(Infinity);
  // Mean power (1 + 0.81)/2 against ((1 − 0.9)/2)²: 25.58 dB.
  close(foldToMono([left, scaled(left, -0.9)]).cancellationDb, 25.58, { abs: 0.01, because: 'two decimals' });
});

test('in six channels a cancelling pair among unrelated ones is found when it carries the sound', () => {
  const main = noise(1, 0.3);
  const rest = [2, 3, 4, 5].map((s) => noise(s, 0.003));
  expect(foldToMono([main, scaled(main, -1), ...rest]).cancellationDb).toBeGreaterThan(6);
});

test('silent channels are a lower level and no cancellation', () => {
  const silence = new Float32Array(COUNT);
  const { samples, cancellationDb } = foldToMono([noise(1), silence]);
  close(samples[5], noise(1)[5] / 2, { rel: 1e-6, because: 'single precision' });
  close(cancellationDb, 0, { abs: 1e-4, because: 'single precision' });
  close(foldToMono([noise(1), noise(2), silence, silence, silence, silence]).cancellationDb, 3.01, {
    abs: 0.1,
    because: 'the sounding pair is a stereo pair'
  });
  expect(foldToMono([silence, silence]).cancellationDb).toBe(0);
});

test('no channels and unequal channels are refused', () => {
  expect(() => foldToMono([])).toThrow(RangeError);
  expect(() => foldToMono([new Float32Array(2), new Float32Array(3)])).toThrow('same length');
});
