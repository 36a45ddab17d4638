import type { Surface } from '../mesh/surface.js';

/** Points of the inner rule. */
export const INNER = 6;

/**
 * Rule of six points on a triangle, exact to the fourth degree: three barycentric coordinates and the weight (they add up
 * to 1) of each (D. A. Dunavant, Int. J. Numer. Methods Eng. 21 (1985) 1129).
 */
export const INNER_RULE = sixPoints();

/** Points of every triangle at which the static kernels are taken. */
export interface TriangleSamples {
  /** Edge midpoints, opposite the corners 0, 1 and 2: nine numbers a triangle. */
  middle: Float64Array;
  centre: Float64Array;
  /** Length of the longest edge. */
  longest: Float64Array;
  /** The points of `INNER_RULE`: 18 numbers a triangle. */
  inner: Float64Array;
}

export function triangleSamples({ mesh: { points, triangles }, area }: Surface): TriangleSamples {
  const count = area.length;
  const middle = new Float64Array(9 * count);
  const centre = new Float64Array(3 * count);
  const longest = new Float64Array(count);
  const inner = new Float64Array(3 * INNER * count);
  for (let t = 0; t < count; t++) {
    const [a, b, c] = [0, 1, 2].map((i) => 3 * triangles[3 * t + i]);
    for (let d = 0; d < 3; d++) {
      const [pa, pb, pc] = [points[a + d], points[b + d], points[c + d]];
      middle[9 * t + d] = (pb + pc) / 2;
      middle[9 * t + 3 + d] = (pc + pa) / 2;
      middle[9 * t + 6 + d] = (pa + pb) / 2;
      centre[3 * t + d] = (pa + pb + pc) / 3;
      for (let p = 0; p < INNER; p++) {
        const [wa, wb, wc] = INNER_RULE.subarray(4 * p, 4 * p + 3);
        inner[3 * (INNER * t + p) + d] = wa * pa + wb * pb + wc * pc;
      }
    }
    const edge = (p: number, q: number) =>
      Math.hypot(points[p] - points[q], points[p + 1] - points[q + 1], points[p + 2] - points[q + 2]);
    longest[t] = Math.max(edge(a, b), edge(b, c), edge(c, a));
  }
  return { middle, centre, longest, inner };
}

function sixPoints(): Float64Array {
  const rows: number[] = [];
  for (const [a, weight] of [
    [0.445948490915965, 0.223381589678011],
    [0.091576213509771, 0.109951743655322]
  ]) {
    const b = 1 - 2 * a;
    rows.push(a, a, b, weight, a, b, a, weight, b, a, a, weight);
  }
  return Float64Array.from(rows);
}
