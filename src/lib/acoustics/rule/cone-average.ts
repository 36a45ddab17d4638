import { gaussLegendre } from '../../numeric/gauss-legendre.js';
import type { Metres } from '../../units.js';
import { outlineLength, outlineWidth, type Outline } from '../outline.js';

const RADII = gaussLegendre(24);
const ANGLES = 96;

/**
 * The mean of f(x, y) over a cone whose middle is at [x0, y0].
 *
 * Ellipse: polar in the scaled unit disc, even steps of the angle, and Gauss–Legendre in s = √(1 − ρ²), because
 * ρ·dρ = −s·ds takes away the square root that f has where the cone reaches the edge of its plate. Rectangle:
 * Gauss–Legendre in u with x = sin u on both axes, for the same reason.
 */
export function coneAverage(
  cone: Outline,
  [x0, y0]: readonly [Metres, Metres],
  f: (x: Metres, y: Metres) => number
): number {
  const a = outlineLength(cone) / 2;
  const b = outlineWidth(cone) / 2;
  const { nodes, weights } = RADII;
  let sum = 0;
  if (cone.shape === 'rectangle') {
    for (let i = 0; i < nodes.length; i++) {
      const u = (Math.PI / 2) * nodes[i];
      const x = x0 + a * Math.sin(u);
      const weight = weights[i] * Math.cos(u);
      for (let j = 0; j < nodes.length; j++) {
        const v = (Math.PI / 2) * nodes[j];
        sum += weight * weights[j] * Math.cos(v) * f(x, y0 + b * Math.sin(v));
      }
    }
    return (sum * Math.PI ** 2) / 16;
  }
  for (let j = 0; j < ANGLES; j++) {
    const angle = (2 * Math.PI * j) / ANGLES;
    const ax = a * Math.cos(angle);
    const by = b * Math.sin(angle);
    for (let i = 0; i < nodes.length; i++) {
      const s = (nodes[i] + 1) / 2;
      const radius = Math.sqrt(1 - s * s);
      sum += weights[i] * s * f(x0 + ax * radius, y0 + by * radius);
    }
  }
  return sum / ANGLES;
}
