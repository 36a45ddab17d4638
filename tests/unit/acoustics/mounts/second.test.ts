import { describe, expect, it, test } from 'vitest';
import type { Installation } from '../../../../src/lib/acoustics/installation.js';
import { airForEach } from '../../../../src/lib/acoustics/mounts/box-volumes.js';
import { checkInstallation } from '../../../../src/lib/acoustics/mounts/check-installation.js';
import type { Mount } from '../../../../src/lib/acoustics/mounts/mount.js';
import { asSeenBySecond, firstAt, type Second } from '../../../../src/lib/acoustics/mounts/second.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { close } from '../../../helpers/close.js';

const PLATE: Mount = { kind: 'plate', shape: 'rectangle', length: 0.16, width: 0.1, offset: [-0.04, 0] };
const ROUND: Mount = { kind: 'plate', shape: 'round', diameter: 0.16, offset: [-0.04, 0] };
const SHELL: Mount = {
  kind: 'shell',
  length: 0.16,
  width: 0.03,
  height: 0.04,
  ends: 'closed',
  offset: -0.04
};
const BOX: Mount = { kind: 'box', length: 0.16, width: 0.03, depth: 0.02 };

function pair(
  mount: Mount,
  at: [number, number],
  more: Partial<Second> = {},
  turn: 0 | 90 = 0
): Installation {
  const second = { at, reversed: false, wiring: 'parallel' as const, ...more };
  return { speaker: SPEAKERS.oval, mount, turn, second };
}

describe('what fits', () => {
  it.each<[string, Installation]>([
    ['touching frames', pair(PLATE, [0, 0])],
    ['side by side across the plate', pair(PLATE, [-0.04, 0.028])],
    ['in a shell, touching its end', pair(SHELL, [0.06, 0])],
    [
      'over the open end of a shell, the cone still on the roof',
      pair({ ...SHELL, ends: 'open' }, [0.063, 0])
    ],
    ['in a box', pair(BOX, [0.06, 0])],
    ['laid across', pair({ ...PLATE, offset: [-0.014, 0] }, [0.014, 0], {}, 90)]
  ])('%s', (_, installation) => {
    expect(() => checkInstallation(installation)).not.toThrow();
  });
});

describe('what does not, in one sentence', () => {
  it.each<[string, Installation]>([
    [
      'in free air nothing holds a second speaker: it needs a plate, a shell or a box',
      pair({ kind: 'free' }, [0.1, 0])
    ],
    [
      'the second speaker lies over the first: their frames (40 × 28 mm) are 39 mm apart from middle to middle',
      pair(PLATE, [-0.001, 0])
    ],
    [
      'the cone of the second speaker (34 × 22.5 mm), 70 and 0 mm from the middle, reaches over the edge of the plate (160 × 100 mm)',
      pair(PLATE, [0.07, 0])
    ],
    [
      'the cone of the second speaker (34 × 22.5 mm), 60 and 50 mm from the middle, reaches over the edge of the plate (ø 160 mm)',
      pair(ROUND, [0.06, 0.05])
    ],
    [
      'the frame of the second speaker (40 × 28 mm), 61 and 0 mm from the middle, reaches over the edge of the roof (160 × 30 mm)',
      pair(SHELL, [0.061, 0])
    ],
    [
      'the cone of the second speaker (34 × 22.5 mm), 50 and 5 mm from the middle, reaches over the edge of the front (160 × 30 mm)',
      pair(BOX, [0.05, 0.005])
    ],
    [
      'place of the second speaker along the length must be within -3000 … 3000 mm, got 4000',
      pair(PLATE, [4, 0])
    ],
    [
      'place of the second speaker across the width must be within -3000 … 3000 mm, got NaN',
      pair(PLATE, [0, NaN])
    ],
    [
      'a second speaker must be wired in parallel or in series, got star',
      pair(PLATE, [0.04, 0], { wiring: 'star' as 'series' })
    ],
    [
      'whether the second speaker is reversed must be true or false, got 1',
      pair(PLATE, [0.04, 0], { reversed: 1 as unknown as boolean })
    ]
  ])('%s', (sentence, installation) => {
    expect(() => checkInstallation(installation)).toThrow(new RangeError(sentence));
  });
});

test('two bodies may fill a box that holds one', () => {
  const box: Mount = { kind: 'box', length: 0.12, width: 0.0285, depth: 0.01 };
  const flat = { ...SPEAKERS.oval, depth: 0.005 };
  expect(() =>
    checkInstallation({ ...pair(box, [0.042, 0]), speaker: { ...flat, bodyVolume: 17e-6 } })
  ).not.toThrow();
  expect(() =>
    checkInstallation({ ...pair(box, [0.042, 0]), speaker: { ...flat, bodyVolume: 17.5e-6 } })
  ).toThrow(new RangeError("the speaker's body fills the box: it takes 35 cm³ and the box holds 34.2 cm³"));
});

test('the air of a box is shared: half for each that pushes with the other, no spring for two that push against each other', () => {
  const net = 0.16 * 0.03 * 0.02 - 2 * SPEAKERS.oval.bodyVolume;
  close(airForEach(pair(BOX, [0.06, 0])), net / 2, { rel: 1e-12, because: 'arithmetic' });
  expect(airForEach(pair(BOX, [0.06, 0], { reversed: true }))).toBe(Infinity);
});

test('the rule of thumb looks at each where it is', () => {
  expect(firstAt(asSeenBySecond(pair(PLATE, [0.04, 0.01])).mount)).toEqual([0.04, 0.01]);
  expect(firstAt(asSeenBySecond(pair(SHELL, [0.04, 0])).mount)).toEqual([0.04, 0]);
  expect(asSeenBySecond(pair(BOX, [0.06, 0]))).not.toHaveProperty('second');
});
