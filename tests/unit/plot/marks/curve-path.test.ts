import { describe, expect, it } from 'vitest';
import { curvePath } from '../../../../src/lib/plot/marks/curve-path.js';
import { curveRuns } from '../../../../src/lib/plot/marks/curve-runs.js';
import { frequencyScale } from '../../../../src/lib/plot/scales/frequency-scale.js';
import { levelScale } from '../../../../src/lib/plot/scales/level-scale.js';
import { close } from '../../../helpers/close.js';
import { random } from '../random.js';

const area = { left: 0, right: 200, top: 0, bottom: 100 };
// 100 pixels a decade, 1 pixel a decibel.
const x = frequencyScale({ from: 100, to: 10000 }, area);
const y = levelScale({ top: 20, bottom: -80 }, area);
const runs = (frequency: number[], levelDb: number[]) =>
  curveRuns({ frequency: Float64Array.from(frequency), levelDb: Float64Array.from(levelDb) }, x, y, area);

/** Numbers to one decimal, so that a path compares as text. */
const normal = (path: string) => path.replace(/-?\d+(\.\d+)?/g, (n) => `${Number(Number(n).toFixed(1)) + 0}`);

describe('curvePath', () => {
  it('draws straight lines between the points', () => {
    expect(normal(curvePath(runs([100, 1000, 10000], [0, -10, 10])))).toBe('M0,20L100,30L200,10');
  });
  it('leaves a gap open at NaN', () => {
    expect(normal(curvePath(runs([100, 200, 1000, 2000, 10000], [0, 0, NaN, 0, 0])))).toBe(
      'M0,20L30.1,20M130.1,20L200,20'
    );
  });
  it('marks a lone point between two gaps', () => {
    expect(normal(curvePath(runs([100, 1000, 10000], [NaN, 0, NaN])))).toBe('M100,20Z');
  });
  it('ends a curve that leaves the floor on the floor, by interpolation', () => {
    // From −60 dB at 1 kHz to −100 dB at 10 kHz the floor of −80 dB is met half a decade on.
    expect(normal(curvePath(runs([100, 1000, 10000], [-60, -60, -100])))).toBe('M0,80L100,80L150,100');
  });
  it('cuts at the top and takes up again where the curve comes back', () => {
    expect(normal(curvePath(runs([100, 1000, 10000], [0, 40, 0])))).toBe('M0,20L50,0M150,0L200,20');
  });
  it('crosses a steep notch between two points outside on both sides', () => {
    expect(normal(curvePath(runs([100, 10000], [70, -130])))).toBe('M50,0L150,100');
  });
  it('begins and ends on the sides of the area when the grid reaches further', () => {
    expect(normal(curvePath(runs([10, 100000], [20, -20])))).toBe('M0,10L200,30');
  });
  it('falls to the floor beside a point of silence and draws nothing that is silent throughout', () => {
    const path = normal(curvePath(runs([100, 1000, 1001], [0, 0, -Infinity])));
    expect(path).toBe('M0,20L100,20L100,100');
    expect(curvePath(runs([100, 1000], [-Infinity, -Infinity]))).toBe('');
  });
  it('is empty for no points', () => {
    expect(curvePath(runs([], []))).toBe('');
  });
});

describe('curveRuns', () => {
  it('never leaves the area, and ends each part on an edge, a gap or an end of the grid, for random curves', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const draw = random(seed);
      const frequency = Array.from({ length: 60 }, (_, i) => 50 * 400 ** (i / 59));
      const levelDb = frequency.map(() => (draw() < 0.05 ? NaN : 60 - 180 * draw()));
      const inner = new Set(frequency.map((f) => x(f)));
      for (const run of runs(frequency, levelDb)) {
        for (const p of run) {
          expect(p.x).toBeGreaterThanOrEqual(area.left - 1e-9);
          expect(p.x).toBeLessThanOrEqual(area.right + 1e-9);
          expect(p.y).toBeGreaterThanOrEqual(area.top - 1e-9);
          expect(p.y).toBeLessThanOrEqual(area.bottom + 1e-9);
        }
        for (const end of [run[0], run[run.length - 1]]) {
          const off = Math.min(
            Math.abs(end.x - area.left),
            Math.abs(end.x - area.right),
            Math.abs(end.y - area.top),
            Math.abs(end.y - area.bottom)
          );
          if (!inner.has(end.x)) close(off, 0, { abs: 1e-9, because: 'an end by clipping lies on an edge' });
        }
      }
    }
  });
});
