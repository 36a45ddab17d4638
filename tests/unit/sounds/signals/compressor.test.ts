import { expect, test } from 'vitest';
import { filter, section } from '../../../../src/lib/sounds/blocks/filter.js';
import { type Compressor, COMPRESSOR_PRESETS } from '../../../../src/lib/sounds/signals/compressor.js';
import { COMPRESSOR_SOURCE } from '../../../../src/lib/sounds/signals/compressor-source.js';
import { close } from '../../../helpers/close.js';

const RATE = 16000;
const render = (change: Partial<Compressor>) =>
  COMPRESSOR_SOURCE.render({ ...COMPRESSOR_PRESETS[0], ...change }, RATE);
const level = (x: Float32Array, from: number, until: number) => {
  const piece = x.subarray(from * RATE, until * RATE);
  return 10 * Math.log10(piece.reduce((sum, v) => sum + v * v, 0) / piece.length);
};

test('with unloading it runs, stops, lets off air and rests', () => {
  const loop = render({ strokes: 420, unloading: true });
  // 39 turns at 7 a second: from 0.1 to 5.67 s; the air comes a fifth of a second later.
  const high = filter(loop, section('highPass', 3500, 0.7, RATE), { sampleRate: RATE, cyclic: true });
  expect(level(high, 5.95, 6.15)).toBeGreaterThan(level(high, 2, 5) + 6);
  expect(level(high, 6.6, 6.8)).toBeLessThan(level(high, 5.95, 6.15) - 10);
  expect(level(loop, 8.1, 8.25)).toBeLessThan(level(loop, 2, 5) - 50);
  expect(level(loop, 0, 0.08)).toBeLessThan(level(loop, 2, 5) - 50);
});

test('it works harder as the pressure rises', () => {
  const loop = render({ unloading: true });
  expect(level(loop, 4.4, 5.4)).toBeGreaterThan(level(loop, 1, 2) + 1);
});

test('without, the loop is a whole number of turns and never rests', () => {
  for (const strokes of [60, 330, 1200]) {
    const loop = render({ strokes, unloading: false });
    const turns = ((loop.length / RATE) * strokes) / 60;
    close(turns, Math.round(turns), { abs: strokes / 60 / RATE, because: 'rounded to a sample' });
    close(loop.length / RATE, 5.5, { abs: 0.51, because: 'half a turn of the slowest' });
  }
  const loop = render({ unloading: false });
  const halves = Array.from({ length: 10 }, (_, n) => level(loop, n / 2, (n + 1) / 2));
  expect(Math.max(...halves) - Math.min(...halves)).toBeLessThan(3);
});

test('the marks are the rate of all strokes, and the turns where they differ', () => {
  const marks = (cylinders: number) =>
    COMPRESSOR_SOURCE.marks({ ...COMPRESSOR_PRESETS[0], strokes: 300, cylinders });
  expect(marks(3).map(({ name, frequency }) => [name, frequency])).toEqual([
    ['stroke rate', 15],
    ['turns', 5]
  ]);
  expect(marks(1)).toEqual([{ name: 'stroke rate', frequency: 5, harmonics: 8 }]);
});
