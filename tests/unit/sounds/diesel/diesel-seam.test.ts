import { expect, test } from 'vitest';
import { DIESEL_SOURCE } from '../../../../src/lib/sounds/diesel/diesel-source.js';
import { DIESEL_PRESETS } from '../../../../src/lib/sounds/diesel/diesel-presets.js';
import { renderLoop } from '../../../../src/lib/sounds/motion/ride.js';
import { seam } from '../../../helpers/seam.js';

const RATE = 32000;
/**
 * The measure is 1 where only one place in a thousand is rougher. There are 36 seams of three figures each, and firings
 * fall near them as anywhere: a few of them may be a little above 1, but never as far as the roughest places are.
 */
const LIMIT = 1.25;

function roughness(samples: Float32Array): number {
  const { step, slope, treble } = seam(samples, RATE);
  return Math.max(step, slope, treble);
}

const all = DIESEL_PRESETS.flatMap((preset) =>
  [0, 1, 2, 3, 4, 5, 6, 7, 8].map((notch) => [preset.name, notch, preset] as const)
);

const rough: number[] = [];

test.each(all)('%s at notch %i: the seam is no rougher than the rest', (_, notch, preset) => {
  const roughest = roughness(renderLoop(DIESEL_SOURCE, { ...preset, notch }, RATE));
  rough.push(roughest);
  expect(roughest).toBeLessThan(LIMIT);
});

test('nine of ten seams are smoother than the roughest thousandth of the rest', () => {
  expect(rough).toHaveLength(all.length);
  expect(rough.filter((x) => x < 1).length).toBeGreaterThanOrEqual(0.9 * rough.length);
});

test('loops cut at other places show that a bad seam would be seen', () => {
  const loop = renderLoop(DIESEL_SOURCE, { ...DIESEL_PRESETS[0], notch: 3.3 }, RATE);
  expect(roughness(loop)).toBeLessThan(LIMIT);
  const cuts = Array.from({ length: 12 }, (_, i) => roughness(loop.slice(0, -1777 * (i + 1))));
  expect(cuts.filter((x) => x > LIMIT).length).toBeGreaterThanOrEqual(4);
});
