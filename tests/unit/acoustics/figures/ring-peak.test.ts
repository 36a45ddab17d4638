import { expect, test } from 'vitest';
import { ringPeak } from '../../../../src/lib/acoustics/figures/ring-peak.js';
import { logGrid } from '../../../../src/lib/numeric/log-grid.js';
import { close } from '../../../helpers/close.js';
import { complexArray } from '../../../../src/lib/numeric/complex-array.js';

/** 1 at all frequencies but for tops of these heights. */
function withTops(tops: Record<number, number>) {
  const frequency = logGrid(500, 4000, 96);
  const { re, im } = complexArray(frequency.length);
  frequency.forEach((_, i) => (re[i] = 1 + 1e-6 * i));
  for (const [f, top] of Object.entries(tops)) re[frequency.findIndex((each) => each >= Number(f))] = top;
  return { frequency, re, im };
}

test('the highest top near where it is expected, not the highest of all', () => {
  const response = withTops({ 900: 9, 1400: 3, 1600: 4, 3000: 8 });
  close(ringPeak(response, 1500, 10_000)!, 1600, { rel: 0.008, because: 'a step of the grid' });
});

test('between the points of the grid', () => {
  const frequency = logGrid(500, 4000, 24);
  const re = frequency.map((f) => 10 ** -(Math.log2(f / 1533) ** 2));
  const response = { frequency, re, im: new Float64Array(re.length) };
  close(ringPeak(response, 1400, 10_000)!, 1533, { rel: 1e-4, because: 'a parabola in dB' });
});

test('none where the curve only rises, and none above what was computed', () => {
  expect(ringPeak(withTops({}), 1500, 10_000)).toBeNull();
  expect(ringPeak(withTops({ 1600: 4 }), 1500, 1550)).toBeNull();
});
