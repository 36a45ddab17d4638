import { describe, expect, it } from 'vitest';
import { arm } from '../../../../src/lib/acoustics/rule/arm.js';
import { coneAverage } from '../../../../src/lib/acoustics/rule/cone-average.js';
import type { Mount } from '../../../../src/lib/acoustics/mounts/mount.js';
import type { Outline } from '../../../../src/lib/acoustics/outline.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { ellipticE } from '../../../../src/lib/numeric/elliptic-e.js';
import { close } from '../../../helpers/close.js';
import { DEMO, ovalIn } from '../../../helpers/demo-installations.js';

const rectangle = (length: number, width: number, x = 0, y = 0): Mount => ({
  kind: 'plate',
  shape: 'rectangle',
  length,
  width,
  offset: [x, y]
});

describe('coneAverage', () => {
  const cones: Outline[] = [
    { shape: 'ellipse', length: 0.034, width: 0.0225 },
    { shape: 'rectangle', length: 0.014, width: 0.0086 },
    { shape: 'round', diameter: 0.03 }
  ];

  it('the mean of 1 is 1, of x the middle, of x² the middle squared and a quarter or a third of the half-length squared', () => {
    for (const cone of cones) {
      const half = (cone.shape === 'round' ? cone.diameter : cone.length) / 2;
      const spread = half ** 2 / (cone.shape === 'rectangle' ? 3 : 4);
      const mean = (f: (x: number, y: number) => number) => coneAverage(cone, [0.01, -0.02], f);
      close(
        mean(() => 1),
        1,
        { abs: 1e-12, because: cone.shape }
      );
      close(
        mean((x) => x),
        0.01,
        { rel: 1e-12, because: cone.shape }
      );
      close(
        mean((_, y) => y),
        -0.02,
        { rel: 1e-12, because: cone.shape }
      );
      close(
        mean((x) => x * x),
        1e-4 + spread,
        { rel: 1e-12, because: cone.shape }
      );
    }
  });
});

describe('arm', () => {
  it('agrees with a plain sum over 1000 × 1000 small squares, cones that touch the edge among them', () => {
    const cases: [Mount, 0 | 90][] = [
      [rectangle(0.1524, 0.1016, 0.03, -0.02), 0],
      [rectangle(0.034, 0.0225), 0],
      [rectangle(0.05, 0.034, 0.01, 0), 90],
      [{ kind: 'plate', shape: 'round', diameter: 0.034, offset: [0, 0] }, 0],
      [{ kind: 'plate', shape: 'round', diameter: 0.06, offset: [0, 0.015] }, 0]
    ];
    for (const [mount, turn] of cases)
      close(arm(ovalIn(mount, turn))!, plainSum(mount, turn), {
        rel: 5e-4,
        because: 'the plain sum is this coarse'
      });
  });

  it('does not care which side is called the length', () => {
    const one = arm(ovalIn(rectangle(0.15, 0.1, 0.02, -0.01), 0))!;
    const other = arm(ovalIn(rectangle(0.1, 0.15, -0.01, 0.02), 90))!;
    close(other, one, {
      rel: 1e-6,
      because: 'the same thing, turned; the quadrature meets it at other angles'
    });
  });

  it('differs between an oval lying along and across', () => {
    const mount = rectangle(0.06, 0.04);
    expect(Math.abs(arm(ovalIn(mount, 90))! / arm(ovalIn(mount, 0))! - 1)).toBeGreaterThan(0.02);
  });

  it('is largest in the middle, and the same for mirrored places', () => {
    const at = (x: number, y: number) => arm(ovalIn(rectangle(0.15, 0.1, x, y)))!;
    for (const [x, y] of [
      [0.02, 0],
      [0, 0.02],
      [0.03, 0.03]
    ]) {
      expect(at(x, y)).toBeLessThan(at(0, 0));
      close(at(-x, y), at(x, y), { rel: 1e-6, because: 'mirror' });
      close(at(x, -y), at(x, y), { rel: 1e-6, because: 'mirror' });
    }
  });

  it('free air is a plate of the frame, however the speaker is turned', () => {
    const plate = arm(ovalIn(rectangle(0.04, 0.028)))!;
    close(arm(DEMO['free air'])!, plate, { rel: 1e-12, because: 'the same outline' });
    close(arm(ovalIn({ kind: 'free' }, 90))!, plate, { rel: 1e-6, because: 'turned as a whole' });
  });

  it('an elliptic frame with a tiny cone: b/E(m)', () => {
    const frame: Outline = { shape: 'ellipse', length: 0.03, width: 0.05 };
    const cone: Outline = { shape: 'round', diameter: 0.001 };
    const d = arm({ speaker: { ...SPEAKERS.oval, frame, cone }, mount: { kind: 'free' }, turn: 0 })!;
    close(d, 0.015 / ellipticE(1 - 0.36), { rel: 1e-3, because: 'the cone is 1 mm wide' });
  });

  it('of a shell is the unfolded string over π, of a box there is none', () => {
    close(arm(DEMO['cab body'])!, 0.113 / Math.PI, { rel: 1e-12, because: '2 × (33/2 + 40) mm' });
    expect(arm(DEMO['closed box'])).toBeNull();
  });
});

/** The oval cone's average arm on a plate, from the formulas, summed over the small squares that lie on the cone. */
function plainSum(mount: Mount, turn: 0 | 90): number {
  if (mount.kind !== 'plate') throw new Error('plates only');
  const [a, b] = turn ? [0.01125, 0.017] : [0.017, 0.01125];
  const [x0, y0] = mount.offset;
  let sum = 0;
  let count = 0;
  for (let i = 0; i < 1000; i++)
    for (let j = 0; j < 1000; j++) {
      const [u, v] = [(i - 499.5) / 500, (j - 499.5) / 500];
      if (u * u + v * v > 1) continue;
      const [x, y] = [x0 + a * u, y0 + b * v];
      count++;
      if (mount.shape === 'round')
        sum += (2 / Math.PI) * Math.sqrt(Math.max(0, (mount.diameter / 2) ** 2 - x * x - y * y));
      else {
        const long = Math.max(mount.length, mount.width) / Math.sqrt(Math.PI);
        const short = Math.min(mount.length, mount.width) / Math.sqrt(Math.PI);
        const left = (1 - ((2 * x) / mount.length) ** 2) * (1 - ((2 * y) / mount.width) ** 2);
        sum += (short / ellipticE(1 - (short / long) ** 2)) * Math.sqrt(Math.max(0, left));
      }
    }
  return sum / count;
}
