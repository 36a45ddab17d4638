import { expect, test } from 'vitest';
import { humpAndHole } from '../../../../src/lib/acoustics/figures/hump-and-hole.js';
import { logGrid } from '../../../../src/lib/numeric/log-grid.js';
import { close } from '../../../helpers/close.js';

const frequency = logGrid(50, 16000, 192);
const GRID = { rel: 0.004, because: 'the grid has 192 points an octave' };

/** The front, and a share of it that comes round so much later, turned about: 1 − a·e^{−jωt}. */
function withBack(share: number, seconds: number) {
  const turn = frequency.map((f) => 2 * Math.PI * f * seconds);
  return {
    frequency,
    re: turn.map((x) => 1 - share * Math.cos(x)),
    im: turn.map((x) => share * Math.sin(x))
  };
}

test('the back helps half a wave later and cancels a whole wave later: |1 − a·e^{−jx}| is 1 + a at π, 1 − a at 2π', () => {
  const { hump, hole } = humpAndHole(withBack(0.7, 1 / 4000), 500, 7000);
  close(hump!, 2000, GRID);
  close(hole!, 4000, GRID);
});

test('what is not plain is not told: a low hump, a shallow hole, what lies outside of the range', () => {
  expect(humpAndHole(withBack(0.35, 1 / 4000), 500, 7000)).toEqual({ hump: null, hole: null });
  const { hump, hole } = humpAndHole(withBack(0.45, 1 / 4000), 500, 7000);
  expect(hole).toBeNull();
  close(hump!, 2000, GRID);
  expect(humpAndHole(withBack(0.7, 1 / 4000), 500, 3500).hole).toBeNull();
  const above = humpAndHole(withBack(0.7, 1 / 4000), 2500, 7000);
  expect(above.hump).toBeNull();
  close(above.hole!, 4000, GRID);
});

test('silence and a curve that only falls have neither', () => {
  const zero = new Float64Array(frequency.length);
  expect(humpAndHole({ frequency, re: zero, im: zero }, 100, 10000)).toEqual({ hump: null, hole: null });
  const falling = frequency.map((f) => 100 / f);
  expect(humpAndHole({ frequency, re: falling, im: zero }, 100, 10000)).toEqual({ hump: null, hole: null });
});
