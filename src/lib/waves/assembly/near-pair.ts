import type { Image } from '../mesh/symmetry.js';
import type { Surface } from '../mesh/surface.js';
import { INNER, INNER_RULE, triangleSamples, type TriangleSamples } from './triangle-samples.js';
import { triangleFrames, trianglePotential } from './triangle-potential.js';

/** Pairs whose middles are closer than this many of their mean longest edges are near. */
const NEAR = 1.6;

/** What near pairs are integrated with. */
export interface NearPairs {
  samples: TriangleSamples;
  frames: Float64Array;
}

export function nearPairs(surface: Surface): NearPairs {
  const { points, triangles } = surface.mesh;
  return { samples: triangleSamples(surface), frames: triangleFrames(points, triangles, surface.normal) };
}

/** Whether triangle s and the image of triangle t need `nearInverse` and `nearDistance`. */
export function isNear(
  { centre, longest }: TriangleSamples,
  s: number,
  t: number,
  { sign, shift }: Image
): boolean {
  const x = centre[3 * s] - shift[0] - sign[0] * centre[3 * t];
  const y = centre[3 * s + 1] - shift[1] - sign[1] * centre[3 * t + 1];
  const z = centre[3 * s + 2] - shift[2] - sign[2] * centre[3 * t + 2];
  const reach = (NEAR * (longest[s] + longest[t])) / 2;
  return x * x + y * y + z * z < reach * reach;
}

/**
 * ∫∫ 1/r over s and the image of t, over the product of their areas: the inner integral in closed form, the outer by six
 * points, averaged over both orders so that the result is symmetric.
 */
export function nearInverse(
  near: NearPairs,
  area: Float64Array,
  s: number,
  t: number,
  { sign, shift }: Image
): number {
  const { samples, frames } = near;
  const { inner } = samples;
  const [sx, sy, sz] = sign;
  const [hx, hy, hz] = shift;
  let sum = 0;
  for (let p = 0; p < INNER; p++) {
    const a = 3 * (INNER * s + p);
    const b = 3 * (INNER * t + p);
    sum +=
      INNER_RULE[4 * p + 3] *
      (trianglePotential(
        frames,
        t,
        sx * (inner[a] - hx),
        sy * (inner[a + 1] - hy),
        sz * (inner[a + 2] - hz)
      ) /
        area[t] +
        trianglePotential(frames, s, sx * inner[b] + hx, sy * inner[b + 1] + hy, sz * inner[b + 2] + hz) /
          area[s]);
  }
  return sum / 2;
}

/** ∫∫ r over s and the image of t, over the product of their areas, by six by six points. */
export function nearDistance(
  { samples: { inner } }: NearPairs,
  s: number,
  t: number,
  { sign, shift }: Image
): number {
  let sum = 0;
  for (let p = 0; p < INNER; p++)
    for (let q = 0; q < INNER; q++) {
      const a = 3 * (INNER * s + p);
      const b = 3 * (INNER * t + q);
      const x = inner[a] - shift[0] - sign[0] * inner[b];
      const y = inner[a + 1] - shift[1] - sign[1] * inner[b + 1];
      const z = inner[a + 2] - shift[2] - sign[2] * inner[b + 2];
      sum += INNER_RULE[4 * p + 3] * INNER_RULE[4 * q + 3] * Math.sqrt(x * x + y * y + z * z);
    }
  return sum;
}
