import { expect, test } from 'vitest';
import { KFilter, kWeighting, type Section } from '../../../src/lib/listening/k-weighting.js';
import { random } from '../../../src/lib/sounds/blocks/random.js';
import { close } from '../../helpers/close.js';

function gainDb(sections: Section[], frequency: number, rate: number): number {
  const w = (2 * Math.PI * frequency) / rate;
  const size = ([c0, c1, c2]: readonly [number, number, number]) =>
    Math.hypot(c0 + c1 * Math.cos(w) + c2 * Math.cos(2 * w), c1 * Math.sin(w) + c2 * Math.sin(2 * w));
  return sections.reduce((sum, { b, a }) => sum + 20 * Math.log10(size(b) / size(a)), 0);
}

test('at 48 kHz the coefficients are those of the standard', () => {
  // ITU-R BS.1770-5, Annex 1, tables 1 and 2.
  expect(kWeighting(48000)).toEqual([
    {
      b: [1.53512485958697, -2.69169618940638, 1.19839281085285],
      a: [1, -1.69065929318241, 0.73248077421585]
    },
    { b: [1, -2, 1], a: [1, -1.99004745483398, 0.99007225036621] }
  ]);
});

test.each([47999.999, 48000.001])('the derivation at %f Hz gives the standard’s coefficients', (rate) => {
  kWeighting(rate).forEach((section, i) => {
    const table = kWeighting(48000)[i];
    // The high-pass has the standard's numerator up to the gain that 1, −2, 1 leaves in it.
    section.b.forEach((b, k) => close(b, table.b[k], { abs: 1e-7, because: 'a millihertz in the rate' }));
    section.a.forEach((a, k) => close(a, table.a[k], { abs: 1e-7, because: 'a millihertz in the rate' }));
  });
});

test.each([8000, 11025, 16000, 44100, 88200, 96000, 192000])(
  'at %i Hz the response is the one at 48 kHz',
  (rate) => {
    for (const frequency of [10, 38, 100, 300, 1000, 1682, 2000, 4000, 8000, 12000]) {
      if (frequency > 0.25 * Math.min(rate, 48000)) continue;
      const expected = gainDb(kWeighting(48000), frequency, 48000);
      close(gainDb(kWeighting(rate), frequency, rate), expected, {
        abs: frequency > 0.05 * rate ? 0.3 : 0.06,
        because: 'the bilinear transform bends frequencies near half the rate'
      });
    }
  }
);

test('the weighting is 0.69 dB at 997 Hz, what the constant −0.691 takes away', () => {
  close(gainDb(kWeighting(48000), 997, 48000), 0.691, {
    abs: 0.005,
    because: 'ITU-R BS.1770-5, Annex 1, note 1'
  });
});

test('stretches one after the other add up to the whole', () => {
  const chance = random(9);
  const samples = Float32Array.from({ length: 5000 }, () => chance.gaussian());
  const whole = new KFilter(48000).energy(samples, 0, 5000);
  const filter = new KFilter(48000);
  const parts =
    filter.energy(samples, 0, 1234) + filter.energy(samples, 1234, 1235) + filter.energy(samples, 1235, 5000);
  close(parts, whole, { rel: 1e-12, because: 'order of summation' });
});

test('rates out of range are refused', () => {
  for (const rate of [7999, 192001, NaN])
    expect(() => kWeighting(rate)).toThrow(`within 8000 … 192000 Hz, got ${rate}`);
});
