import { expect, test } from 'vitest';
import type { Installation } from '../../../../src/lib/acoustics/installation.js';
import { outsideSize } from '../../../../src/lib/acoustics/mounts/outside-size.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';

/** In mm and cm³. */
function shown(installation: Installation, wall?: number): number[] {
  const { length, width, height, taken } = outsideSize(installation, wall);
  const round = (value: number) => Number(value.toPrecision(6));
  return [length * 1000, width * 1000, height * 1000, taken * 1e6].map(round);
}

// The oval is 40 × 28 mm, 12 mm deep, with a body of 6.72 cm³.
const speaker = SPEAKERS.oval;
const at = [0, 0] as [number, number];

test.each<[string, Installation['mount'], number[]]>([
  ['free air', { kind: 'free' }, [40, 28, 12, 6.72]],
  // 10 × 6 cm of 1 mm are 6 cm³
  [
    'a plate',
    { kind: 'plate', shape: 'rectangle', length: 0.1, width: 0.06, offset: at },
    [100, 60, 13, 12.72]
  ],
  [
    'a plate smaller than the frame',
    { kind: 'plate', shape: 'rectangle', length: 0.036, width: 0.024, offset: at },
    [40, 28, 13, 7.584]
  ],
  [
    'a closed shell',
    { kind: 'shell', length: 0.152, width: 0.03, height: 0.045, ends: 'closed', offset: 0 },
    [154, 32, 46, 6.72]
  ],
  [
    'an open one',
    { kind: 'shell', length: 0.152, width: 0.03, height: 0.045, ends: 'open', offset: 0 },
    [152, 32, 46, 6.72]
  ],
  // 4.4 × 3.2 × 1.8 cm: the frame lies in the front, which is no wall more
  ['a box', { kind: 'box', length: 0.042, width: 0.03, depth: 0.017 }, [44, 32, 18, 25.344]],
  [
    'a box behind a grille',
    {
      kind: 'box',
      length: 0.042,
      width: 0.03,
      depth: 0.017,
      grille: { holes: 20, diameter: 0.002, thickness: 0.001, cavity: 0.002 }
    },
    [44, 32, 21, 29.568]
  ]
])('%s by hand, with walls of 1 mm', (_, mount, expected) => {
  expect(shown({ speaker, mount, turn: 0 })).toEqual(expected);
});

test('other walls, a turned speaker, and two of them', () => {
  const box = { kind: 'box', length: 0.042, width: 0.03, depth: 0.017 } as const;
  // 4.6 × 3.4 × 1.9 cm
  expect(shown({ speaker, mount: box, turn: 0 }, 0.002)).toEqual([46, 34, 19, 29.716]);
  expect(shown({ speaker, mount: { kind: 'free' }, turn: 90 })).toEqual([28, 40, 12, 6.72]);
  const second = { at: [0.05, 0], reversed: false, wiring: 'parallel' } as const;
  const shell = {
    kind: 'shell',
    length: 0.152,
    width: 0.03,
    height: 0.045,
    ends: 'closed',
    offset: -0.04
  } as const;
  expect(shown({ speaker, mount: shell, turn: 0, second })[3]).toBe(13.44);
});
