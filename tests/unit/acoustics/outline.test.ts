import { describe, expect, it } from 'vitest';
import {
  outlineArea,
  outlineContains,
  outlineLength,
  outlineWidth,
  turned,
  type Outline
} from '../../../src/lib/acoustics/outline.js';
import { close } from '../../helpers/close.js';
import { noise } from '../../helpers/noise.js';

const rectangle: Outline = { shape: 'rectangle', length: 0.04, width: 0.02 };
const ellipse: Outline = { shape: 'ellipse', length: 0.04, width: 0.02 };
const round: Outline = { shape: 'round', diameter: 0.03 };

describe('size of an outline', () => {
  it('has a length, a width and an area', () => {
    expect([outlineLength(rectangle), outlineWidth(rectangle)]).toEqual([0.04, 0.02]);
    expect([outlineLength(round), outlineWidth(round)]).toEqual([0.03, 0.03]);
    close(outlineArea(rectangle), 8e-4, { rel: 1e-12, because: '40 × 20 mm' });
    close(outlineArea(ellipse), Math.PI * 2e-4, { rel: 1e-12, because: 'π·20·10 mm²' });
    close(outlineArea(round), Math.PI * 2.25e-4, { rel: 1e-12, because: 'π·15² mm²' });
  });

  it('changes length and width at a quarter turn', () => {
    expect(turned(ellipse, 90)).toEqual({ shape: 'ellipse', length: 0.02, width: 0.04 });
    expect(turned(turned(rectangle, 90), 90)).toEqual(rectangle);
    expect(turned(rectangle, 0)).toBe(rectangle);
    expect(turned(round, 90)).toBe(round);
  });
});

describe('outlineContains', () => {
  it('accepts an outline in itself', () => {
    for (const outline of [rectangle, ellipse, round]) expect(outlineContains(outline, outline)).toBe(true);
  });

  it('refuses what touches as soon as it is moved outwards', () => {
    for (const outline of [rectangle, ellipse, round])
      for (const offset of [
        [1e-6, 0],
        [0, -1e-6]
      ] as [number, number][])
        expect(outlineContains(outline, outline, offset)).toBe(false);
  });

  it('knows that a rectangle has corners: its diagonal of 50 mm in a circle', () => {
    const inner: Outline = { shape: 'rectangle', length: 0.04, width: 0.03 };
    expect(outlineContains({ shape: 'round', diameter: 0.05 }, inner)).toBe(true);
    expect(outlineContains({ shape: 'round', diameter: 0.04999 }, inner)).toBe(false);
  });

  it('circles: the middles are apart by no more than the difference of the radii', () => {
    const small: Outline = { shape: 'round', diameter: 0.01 };
    expect(outlineContains(round, small, [0.006, 0.008])).toBe(true);
    expect(outlineContains(round, small, [0.0061, 0.008])).toBe(false);
  });

  it('agrees with a walk round the inner outline, any shapes and offsets', () => {
    const random = noise(4000, 7);
    let i = 0;
    const next = () => (random[i++] + 1) / 2;
    let within = 0;
    for (let trial = 0; trial < 400; trial++) {
      const outer: Outline = {
        shape: next() < 0.5 ? 'ellipse' : 'rectangle',
        length: 0.05 + next() / 20,
        width: 0.05
      };
      const inner: Outline = {
        shape: next() < 0.7 ? 'ellipse' : 'rectangle',
        length: 0.01 + next() * 0.05,
        width: 0.01 + next() * 0.03
      };
      const [x, y] = [(next() - 0.5) * 0.05, (next() - 0.5) * 0.03];
      const most = farthestOut(outer, inner, x, y);
      if (Math.abs(most - 1) < 1e-4) continue;
      if (most < 1) within++;
      expect(outlineContains(outer, inner, [x, y]), JSON.stringify({ outer, inner, x, y, most })).toBe(
        most < 1
      );
    }
    expect(within).toBeGreaterThan(100);
    expect(within).toBeLessThan(300);
  });
});

/** How far out the inner outline reaches, as a share of the outer one, by walking round it in small steps. */
function farthestOut(outer: Outline, inner: Outline, x: number, y: number): number {
  let most = 0;
  for (let n = 0; n < 3600; n++) {
    const t = (n * Math.PI) / 1800;
    let [u, v] = [Math.cos(t), Math.sin(t)];
    if (inner.shape === 'rectangle') {
      const stretch = 1 / Math.max(Math.abs(u), Math.abs(v));
      [u, v] = [u * stretch, v * stretch];
    }
    const px = (2 * (x + (u * outlineLength(inner)) / 2)) / outlineLength(outer);
    const py = (2 * (y + (v * outlineWidth(inner)) / 2)) / outlineWidth(outer);
    most = Math.max(
      most,
      outer.shape === 'rectangle' ? Math.max(Math.abs(px), Math.abs(py)) : Math.hypot(px, py)
    );
  }
  return most;
}
