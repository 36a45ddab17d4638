import { describe, expect, it } from 'vitest';
import { quarterWaveOutline, springPath, wavePath } from '../../../../src/lib/screens/help/shapes.js';

const points = (path: string): number[][] =>
  path
    .split(/[ML]/)
    .filter(Boolean)
    .map((pair) => pair.split(',').map(Number));

describe('wavePath', () => {
  it('crosses its line after half a wave', () => {
    const at = (x: number) => points(wavePath(10, 50, 60, 60, 20)).find((point) => point[0] === x)!;
    expect(at(10)[1]).toBe(50);
    expect(at(25)[1]).toBe(30);
    expect(at(40)[1]).toBe(50);
    expect(at(55)[1]).toBe(70);
  });
});

describe('quarterWaveOutline', () => {
  it('is widest at the closed end and closes at the open one, alike on both sides', () => {
    const all = points(quarterWaveOutline(100, 20, 30, 80));
    const [left, right] = [all.slice(0, all.length / 2), all.slice(all.length / 2)];
    expect(left[0]).toEqual([70, 20]);
    expect(right[0]).toEqual([130, 20]);
    expect(left.at(-1)).toEqual([100, 100]);
    left.forEach(([x, y], i) => expect([x + right[i][0], y]).toEqual([200, right[i][1]]));
  });
});

describe('springPath', () => {
  it('begins and ends in the middle and stays within its width', () => {
    const all = points(springPath(50, 10, 34, 8));
    expect(all[0]).toEqual([50, 10]);
    expect(all.at(-1)).toEqual([50, 34]);
    for (const [x] of all) expect(Math.abs(x - 50)).toBeLessThanOrEqual(8);
    expect(new Set(all.map(([x]) => x)).size).toBe(3);
  });
});
