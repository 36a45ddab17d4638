import { describe, expect, it } from 'vitest';
import { gaussLegendre } from '../../../src/lib/numeric/gauss-legendre.js';
import { close } from '../../helpers/close.js';

describe('gaussLegendre', () => {
  it('has the nodes and weights of two points in closed form: ±1/√3 and 1', () => {
    const { nodes, weights } = gaussLegendre(2);
    [-1, 1].forEach((sign, i) => {
      close(nodes[i], sign / Math.sqrt(3), { abs: 1e-15, because: 'rounding' });
      close(weights[i], 1, { abs: 1e-15, because: 'rounding' });
    });
  });

  it('integrates every power up to 2n − 1 exactly, and not the next even one', () => {
    for (const points of [1, 2, 3, 5, 24, 64]) {
      const { nodes, weights } = gaussLegendre(points);
      const integral = (power: number) => nodes.reduce((sum, x, i) => sum + weights[i] * x ** power, 0);
      for (let power = 0; power < 2 * points; power++)
        close(integral(power), power % 2 ? 0 : 2 / (power + 1), {
          abs: 1e-13,
          because: `${points} points, power ${power}`
        });
      if (points < 6) expect(Math.abs(integral(2 * points) - 2 / (2 * points + 1))).toBeGreaterThan(1e-5);
    }
  });

  it('refuses a number of points that is none', () => {
    for (const points of [0, 1.5, -1, NaN, 1e9]) expect(() => gaussLegendre(points)).toThrow(RangeError);
  });
});
