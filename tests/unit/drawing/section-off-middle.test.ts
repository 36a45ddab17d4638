import { expect, test } from 'vitest';
import type { Installation } from '../../../src/lib/acoustics/installation.js';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { sectionOf } from '../../../src/lib/drawing/section.js';

const BOX: Installation = {
  speaker: SPEAKERS['phone-11x15'],
  mount: { kind: 'box', length: 0.05, width: 0.03, depth: 0.01 },
  turn: 0
};
const withOffset = (offset: [number, number], at?: [number, number]): Installation => ({
  ...BOX,
  mount: { ...BOX.mount, offset } as Installation['mount'],
  ...(at && { second: { at, reversed: false, wiring: 'parallel' } })
});

test('a box is cut through its cone, along where that is off the middle along, and through both of two', () => {
  expect(sectionOf(BOX)).toMatchObject({ cut: { plane: 'across' }, speaker: { middle: 0 }, second: null });
  const along = sectionOf(withOffset([0.012, 0.002]));
  expect(along).toMatchObject({
    cut: { plane: 'along' },
    speaker: { middle: 12 },
    bounds: { left: -25, right: 25 }
  });
  expect(sectionOf(withOffset([0, -0.005]))).toMatchObject({
    cut: { plane: 'across' },
    speaker: { middle: -5 }
  });
  const two = sectionOf(withOffset([-0.0075, 0], [0.0075, 0]));
  expect(two).toMatchObject({ cut: { plane: 'along' }, speaker: { middle: -7.5 }, second: { middle: 7.5 } });
  // in the middle, beside one across
  expect(sectionOf(withOffset([0, 0], [0, 0.011])).second).toMatchObject({ middle: 11 });
});
