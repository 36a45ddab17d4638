import type { Surface } from '../mesh/surface.js';

/**
 * The rule ∫ f dS ≈ Σ area/3·f(edge midpoints), exact for quadratic f on every triangle, with the midpoints that neighbours in
 * one plane have in common taken once. On a fold there is one for each side.
 */
export interface EdgeMidpoints {
  /** The two nodes of every edge. */
  ends: Int32Array;
  /** Unit normal, three numbers a midpoint. */
  normals: Float64Array;
  /** What of the area belongs to it. */
  areas: Float64Array;
}

export function edgeMidpoints({ mesh: { points, triangles }, normal, area }: Surface): EdgeMidpoints {
  const nodes = points.length / 3;
  const ends: number[] = [];
  const normals: number[] = [];
  const areas: number[] = [];
  const known = new Map<number, number[]>();
  for (let t = 0; t < area.length; t++) {
    const n = normal.subarray(3 * t, 3 * t + 3);
    for (let i = 0; i < 3; i++) {
      const [a, b] = [triangles[3 * t + i], triangles[3 * t + ((i + 1) % 3)]];
      const key = Math.min(a, b) * nodes + Math.max(a, b);
      const same = known.get(key) ?? [];
      known.set(key, same);
      let p = same.find((q) => n.every((x, d) => Math.abs(x - normals[3 * q + d]) < 1e-7));
      if (p === undefined) {
        p = areas.length;
        same.push(p);
        ends.push(a, b);
        normals.push(...n);
        areas.push(0);
      }
      areas[p] += area[t] / 3;
    }
  }
  return {
    ends: Int32Array.from(ends),
    normals: Float64Array.from(normals),
    areas: Float64Array.from(areas)
  };
}
