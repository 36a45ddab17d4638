import { describe, expect, it } from 'vitest';
import { curveColour, curveDashes, type CurveStyle } from '../../../src/lib/plot/curve-style.js';

const styles: CurveStyle[] = [1, 2, 3, 4, 5, 6];

describe('curveDashes', () => {
  it('gives each of the six styles a pattern of its own', () => {
    expect(new Set(styles.map((style) => curveDashes(style, 2))).size).toBe(6);
  });
  it('keeps a visible gap beside round caps, and pairs of dash and gap', () => {
    for (const style of styles) {
      const lengths = curveDashes(style, 2).split(' ').map(Number);
      expect(lengths.length % 2).toBe(0);
      for (let i = 1; i < lengths.length; i += 2) expect(lengths[i] - 2).toBeGreaterThanOrEqual(2);
    }
  });
  it('grows with the stroke', () => {
    expect(curveDashes(3, 4)).toBe('32 11.2');
  });
});

describe('curveColour', () => {
  it('is a custom property of the page', () => {
    expect(curveColour(4)).toBe('var(--mount-4, currentColor)');
  });
});
