import { describe, expect, it } from 'vitest';
import type { Mount, ShellMount } from '../../src/lib/acoustics/mounts/mount.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { stringPath } from '../../src/lib/acoustics/mounts/string-path.js';
import { close } from '../helpers/close.js';
import { ovalIn } from '../helpers/demo-installations.js';
import { wayToFreeEdge } from '../helpers/geodesic.js';
import { discSurface, rectangleSurface, shellSurface } from '../helpers/surfaces.js';

const plate = (length: number, width: number, x: number, y: number): Mount => ({
  kind: 'plate',
  shape: 'rectangle',
  length,
  width,
  offset: [x, y]
});
const disc = (diameter: number, x: number, y: number): Mount => ({
  kind: 'plate',
  shape: 'round',
  diameter,
  offset: [x, y]
});
const shell = (
  length: number,
  width: number,
  height: number,
  ends: 'open' | 'closed',
  offset: number
): ShellMount => ({
  kind: 'shell',
  length,
  width,
  height,
  ends,
  offset
});

/** By hand: lengths in millimetres, the sum written out beside each. */
const byHand: [what: string, mount: Mount, d: number, edge: string, direction: [number, number]][] = [
  ['free air: the frame is 28 mm wide, 2 × 14', { kind: 'free' }, 28, 'side', [0, 1]],
  ['plate 6 × 4 in, middle: 2 × 50.8', plate(0.1524, 0.1016, 0, 0), 101.6, 'side', [0, 1]],
  ['plate, 20 mm to +y: 2 × (50.8 − 20)', plate(0.1524, 0.1016, 0, 0.02), 61.6, 'side', [0, 1]],
  ['plate, 20 mm to −y: 2 × (50.8 − 20)', plate(0.1524, 0.1016, 0, -0.02), 61.6, 'side', [0, -1]],
  ['plate, 50 mm to −x, 10 to +y: 2 × (76.2 − 50)', plate(0.1524, 0.1016, -0.05, 0.01), 52.4, 'end', [-1, 0]],
  ['plate lying across, 30 to +x: 2 × (50 − 30)', plate(0.1, 0.16, 0.03, 0), 40, 'end', [1, 0]],
  ['disc ø 100, middle: 2 × 50', disc(0.1, 0, 0), 100, 'rim', [0, 1]],
  ['disc ø 100, 3-4-5 triangle of 25 mm: 2 × (50 − 25)', disc(0.1, 0.015, -0.02), 50, 'rim', [0.6, -0.8]],
  ['closed shell: 2 × (33/2 + 40)', shell(0.152, 0.033, 0.04, 'closed', 0), 113, 'side', [0, 1]],
  [
    'closed shell, 60 mm along: the end is 76 − 60 + 40 = 56 mm away, the side 56.5',
    shell(0.152, 0.033, 0.04, 'closed', 0.06),
    112,
    'end',
    [1, 0]
  ],
  ['open shell, 60 mm to −x: 2 × (76 − 60)', shell(0.152, 0.033, 0.04, 'open', -0.06), 32, 'end', [-1, 0]],
  ['open shell, middle: side 56.5, end 76', shell(0.152, 0.033, 0.04, 'open', 0), 113, 'side', [0, 1]],
  [
    'short closed shell 60 × 50 × 20: side 45, end 50',
    shell(0.06, 0.05, 0.02, 'closed', 0),
    90,
    'side',
    [0, 1]
  ],
  [
    'low wide closed shell 44 × 60 × 10: end 22 + 10',
    shell(0.044, 0.06, 0.01, 'closed', 0),
    64,
    'end',
    [1, 0]
  ]
];

describe('string path by hand', () => {
  for (const [what, mount, d, edge, direction] of byHand)
    it(what, () => {
      const string = stringPath(ovalIn(mount))!;
      close(string.length * 1000, d, { abs: 1e-9, because: 'sums of the sizes, in mm' });
      expect(string.edge).toBe(edge);
      string.direction.forEach((x, i) => close(x, direction[i], { abs: 1e-12, because: 'rounding' }));
    });

  it('an oval turned across: still the short side of its frame, now along x', () => {
    const string = stringPath(ovalIn({ kind: 'free' }, 90))!;
    close(string.length, 0.028, { rel: 1e-12, because: 'the frame is 28 mm wide' });
    expect([string.edge, string.direction]).toEqual(['end', [1, 0]]);
  });

  it('an elliptic frame of 30 × 50: the end of the short axis', () => {
    const frame = { shape: 'ellipse', length: 0.03, width: 0.05 } as const;
    const string = stringPath({ speaker: { ...SPEAKERS.oval, frame }, mount: { kind: 'free' }, turn: 0 })!;
    close(string.length, 0.03, { rel: 1e-12, because: 'twice the short half-axis' });
    expect([string.edge, string.direction]).toEqual(['rim', [1, 0]]);
  });

  it('there is no way round a box', () => {
    expect(stringPath(ovalIn({ kind: 'box', length: 0.042, width: 0.029, depth: 0.017 }))).toBeNull();
  });

  it('the route is as long as half the string and leaves in its direction', () => {
    for (const [, mount] of byHand) {
      const { length, route, direction } = stringPath(ovalIn(mount))!;
      let sum = 0;
      for (let i = 1; i < route.length; i++)
        sum += Math.hypot(...route[i].map((x, k) => x - route[i - 1][k]));
      close(2 * sum, length, { rel: 1e-12, because: 'the same way back' });
      const first = Math.hypot(...route[1].map((x, k) => x - route[0][k]));
      for (const k of [0, 1])
        close((route[1][k] - route[0][k]) / first, direction[k], { abs: 1e-12, because: 'rounding' });
    }
  });
});

/**
 * Brute force: the way found is never shorter than the shortest and crosses every mesh edge at one of seventeen nodes, which
 * costs less than 0.3 %. The polygon's sides lie inside the circle: 1 − cos(π/96) = 0.05 % of the radius nearer.
 */
const LONGER = 0.003;

describe('string path against a brute-force geodesic over a fine mesh', () => {
  const compare = (mount: Mount, way: number, nearer = 0) => {
    const half = stringPath(ovalIn(mount))!.length / 2;
    if (way < half * (1 - 1e-9) - nearer || way > half * (1 + LONGER))
      throw new Error(`brute force finds ${way} m, the closed form ${half} m`);
  };

  it('off-centre rectangles', () => {
    for (const [length, width, x, y] of [
      [0.1524, 0.1016, 0, 0],
      [0.1524, 0.1016, 0.0213, -0.0171],
      [0.1524, 0.1016, -0.0571, 0.0031],
      [0.08, 0.13, 0.0117, 0.0391]
    ])
      compare(plate(length, width, x, y), wayToFreeEdge(rectangleSurface(length, width), [x, y, 0]));
  });

  it('off-centre discs', () => {
    const corners = 96;
    const surface = discSurface(0.1, corners);
    for (const [x, y] of [
      [0, 0],
      [0.0131, -0.0047],
      [-0.0213, 0.0211]
    ])
      compare(disc(0.1, x, y), wayToFreeEdge(surface, [x, y, 0]), 0.05 * (1 - Math.cos(Math.PI / corners)));
  });

  it('shells with open and closed ends, the speaker anywhere along the roof', () => {
    for (const ends of ['open', 'closed'] as const)
      for (const [length, width, height] of [
        [0.152, 0.033, 0.04],
        [0.06, 0.05, 0.02],
        [0.044, 0.06, 0.01]
      ])
        for (const share of [0, -0.23, 0.41]) {
          const mount = shell(length, width, height, ends, share * length);
          compare(mount, wayToFreeEdge(shellSurface(mount), [mount.offset, 0, 0]));
        }
  });
});
