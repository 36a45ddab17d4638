import { expect, test } from 'vitest';
import type { Installation } from '../../src/lib/acoustics/installation.js';
import { checkInstallation } from '../../src/lib/acoustics/mounts/check-installation.js';
import { refusal } from '../../src/lib/acoustics/refusal.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { hearWaves, heardResponse } from '../../src/lib/waves/curve/heard-waves.js';
import type { AccuracyName } from '../../src/lib/waves/mesh/accuracy.js';
import { solveMount } from '../../src/lib/waves/wave-solution.js';
import { close } from '../helpers/close.js';
import { AIR } from '../helpers/demo-installations.js';
import { db } from '../unit/waves/wave-cases.js';

/** 50 × 24 × 10 mm inside, with a phone type of 15 × 11 mm. */
function box(offset: [number, number] | null, second?: [number, number]): Installation {
  return {
    speaker: SPEAKERS['phone-11x15'],
    mount: { kind: 'box', length: 0.05, width: 0.024, depth: 0.01, ...(offset && { offset }) },
    turn: 0,
    ...(second && { second: { at: second, reversed: false, wiring: 'parallel' } })
  };
}

const FREQUENCY = Float64Array.of(200, 700, 1500, 2900);

function levels(
  installation: Installation,
  angleDeg: number,
  plane: 'length' | 'width',
  accuracy: AccuracyName = 'draft'
): number[] {
  const solved = solveMount(installation, AIR, { accuracy });
  const heard = hearWaves(solved, { angleDeg, plane });
  const { re, im } = heardResponse(heard, installation, AIR, FREQUENCY, 'full');
  return [...FREQUENCY.keys()].map((i) => db({ re: re[i], im: im[i] }));
}

test.each([
  ['length', [0.012, 0], [-0.012, 0]],
  ['width', [0, 0.005], [0, -0.005]]
] as const)('along the %s, as far off one way as the other is the mirror image', (plane, one, other) => {
  const [there, back] = [levels(box([...one]), 50, plane), levels(box([...other]), -50, plane)];
  there.forEach((level, i) => close(level, back[i], { abs: 1e-6, because: 'one is the other in a mirror' }));
  // and it is no small thing which side it is
  const same = levels(box([...other]), 50, plane);
  expect(Math.max(...there.map((level, i) => Math.abs(level - same[i])))).toBeGreaterThan(0.2);
});

test('in the middle it is the box that says nothing of it, and a hundredth of a millimetre off nearly so', () => {
  const middle = levels(box(null), 30, 'length');
  expect(levels(box([0, 0]), 30, 'length')).toEqual(middle);
  levels(box([1e-5, 0]), 30, 'length').forEach((level, i) =>
    close(level, middle[i], { abs: 0.01, because: 'the path is 0.005 mm shorter; modes change by as little' })
  );
});

test('two on both sides of the middle are the same from both sides, and the draft is that of the full mesh', () => {
  const pair = box([-0.0075, 0], [0.0075, 0]);
  const [left, right, full] = [
    levels(pair, 40, 'length'),
    levels(pair, -40, 'length'),
    levels(pair, 40, 'length', 'full')
  ];
  left.forEach((level, i) => {
    close(level, right[i], { abs: 1e-6, because: 'they are mirror images' });
    close(level, full[i], { abs: 0.9, because: 'the stated errors of both: 0.6 and 0.3 dB' });
  });
});

test('a cone beyond the edge of the front is refused, and one at the edge is not', () => {
  const said = (offset: [number, number]) => refusal(() => checkInstallation(box(offset)));
  // the cone is 11.4 × 7 mm: 19.3 mm along and 8.5 across are left for its middle
  expect(said([0.0193, -0.0085])).toBeNull();
  expect(said([0.0194, 0])).toBe(
    'the cone (11.4 × 7 mm), 19.4 and 0 mm from the middle, reaches over the edge of the front of the box (50 × 24 mm inside)'
  );
  expect(said([0, 4])).toMatch(/^box offset across the width must be within/);
});
