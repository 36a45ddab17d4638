import type { Vector } from '../mesh/symmetry.js';
import type { WaveProblem, WaveState } from '../solve/wave-problem.js';
import type { Complex } from '../../numeric/complex.js';

/**
 * The far field of one piston towards a unit vector against the same volume velocity in an endless plate, on its axis, at the
 * same distance from the middle: p·r·e^{jkr}/(jωρU/(2π)) = (jk/2S)·∫ m·(n·d)·e^{jk·y·d} dS, y from the middle of all cones, by
 * the quadrature of the matrix, so that energy is kept exactly. All images are summed; with a wall it holds on its near side.
 *
 * @param direction unit vector from the middle to the listener
 * @param count of the images, the first of them, that are summed: all, or those of the surface itself without its reflections
 */
export function farField(
  { surface, pistons, middle }: WaveProblem,
  { k, jumps }: WaveState,
  direction: Vector,
  piston = 0,
  count = surface.images.length
): Complex {
  const { images, classes, quadrature } = surface;
  const { points, normals, start, point, weight } = quadrature;
  const nodes = points.length / 3;
  const patternRe = new Float64Array(nodes);
  const patternIm = new Float64Array(nodes);
  let [re, im] = [0, 0];
  classes.forEach(({ character, nodes: kept }, c) => {
    const m = jumps[piston][c];
    if (!m) return;
    patternRe.fill(0);
    patternIm.fill(0);
    images.slice(0, count).forEach(({ sign, shift }, g) => {
      const [dx, dy, dz] = [0, 1, 2].map((d) => sign[d] * direction[d]);
      const behind = dot(direction, middle) - dot(direction, shift);
      for (let p = 0; p < nodes; p++) {
        const o = 3 * p;
        const facing = character[g] * (dx * normals[o] + dy * normals[o + 1] + dz * normals[o + 2]);
        const phase = k * (dx * points[o] + dy * points[o + 1] + dz * points[o + 2] - behind);
        patternRe[p] += facing * Math.cos(phase);
        patternIm[p] += facing * Math.sin(phase);
      }
    });
    for (let i = 0; i < kept.length; i++)
      for (let e = start[kept[i]]; e < start[kept[i] + 1]; e++) {
        const w = weight[e];
        const p = point[e];
        re += w * (m.re[i] * patternRe[p] - m.im[i] * patternIm[p]);
        im += w * (m.re[i] * patternIm[p] + m.im[i] * patternRe[p]);
      }
  });
  const scale = k / (2 * pistons[piston].area);
  return { re: -scale * im, im: scale * re };
}

function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
