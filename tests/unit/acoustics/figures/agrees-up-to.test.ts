import { expect, test } from 'vitest';
import { agreesUpTo } from '../../../../src/lib/acoustics/figures/agrees-up-to.js';
import { logGrid } from '../../../../src/lib/numeric/log-grid.js';
import { close } from '../../../helpers/close.js';

const frequency = logGrid(50, 16000, 24);
const flat = new Float64Array(frequency.length);

test('two straight lines part where one octave makes 6.02 dB', () => {
  const rising = frequency.map((f) => (20 * Math.log10(f / 50)) / 2);
  const exact = {
    rel: 1e-9,
    because: 'both are straight on a logarithmic scale: nothing is lost between points'
  };
  close(agreesUpTo(frequency, flat, rising, 10 * Math.log10(2))!, 100, exact);
  close(agreesUpTo(frequency, rising, flat, 10 * Math.log10(3))!, 150, exact);
});

test('a first-order low-pass is 3.01 dB down at its corner', () => {
  const corner = 1000;
  const low = frequency.map((f) => -10 * Math.log10(1 + (f / corner) ** 2));
  close(agreesUpTo(frequency, flat, low, 10 * Math.log10(2))!, corner, {
    rel: 1e-3,
    because: 'a straight line between points a 24th of an octave apart'
  });
});

test('where it never departs it is good to the end, where it is off at once it is good for nothing', () => {
  expect(agreesUpTo(frequency, flat, flat, 3)).toBe(frequency[frequency.length - 1]);
  expect(
    agreesUpTo(
      frequency,
      flat,
      flat.map(() => -4),
      3
    )
  ).toBeNull();
});
