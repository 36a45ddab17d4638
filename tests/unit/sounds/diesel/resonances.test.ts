import { expect, test } from 'vitest';
import { filter, section } from '../../../../src/lib/sounds/blocks/filter.js';
import { loopSpan } from '../../../../src/lib/sounds/blocks/span.js';
import { addResonances } from '../../../../src/lib/sounds/diesel/resonances.js';

const RATE = 16000;
const SIX = [70, 150, 330, 700, 1500, 3000].map((frequency, i) => ({
  frequency,
  q: 1 + i / 3,
  gain: 1 - i / 8
}));

test.each([true, false])('it is the sum of band-pass sections one after the other, cyclic: %s', (cyclic) => {
  const span = { ...loopSpan(RATE, RATE, 5), cyclic };
  const noise = span.noise(0);
  const sum = new Float32Array(noise.length).fill(0.25);
  addResonances(noise, SIX, span, sum);
  const expected = new Float32Array(noise.length).fill(0.25);
  for (const { frequency, q, gain } of SIX)
    filter(noise, section('bandPass', frequency, q, RATE), span, gain, expected);
  const apart = sum.reduce((most, x, i) => Math.max(most, Math.abs(x - expected[i])), 0);
  expect(apart).toBeLessThan(2e-6);
});

test('what lies above 0.45 of the sample rate is left out', () => {
  const span = loopSpan(4000, RATE, 5);
  const sum = new Float32Array(4000);
  addResonances(span.noise(0), [{ frequency: 7300, q: 2, gain: 1 }], span, sum);
  expect(sum.every((x) => x === 0)).toBe(true);
});
