import type { WaveProblem, WaveState } from '../solve/wave-problem.js';
import type { Complex } from '../../numeric/complex.js';

/**
 * The far field towards a unit vector against the same volume velocity in an endless plate, on its axis, at the same
 * distance from the middle of the cone: p·r·e^{jkr}/(jωρU/(2π)) = (jk/2S)·∫ m·(n·d)·e^{jk·y·d} dS, y from the middle of the cone,
 * by the quadrature of the matrix, so that energy is kept exactly.
 *
 * @param direction unit vector from the middle of the cone to the listener
 */
export function farField(
  { surface, piston, area }: WaveProblem,
  { k, jumps }: WaveState,
  direction: readonly [number, number, number]
): Complex {
  const { images, classes, quadrature } = surface;
  const { points, normals, start, point, weight } = quadrature;
  const count = points.length / 3;
  const patternRe = new Float64Array(count);
  const patternIm = new Float64Array(count);
  let [re, im] = [0, 0];
  classes.forEach(({ character, nodes }, c) => {
    const m = jumps[c];
    if (!m) return;
    patternRe.fill(0);
    patternIm.fill(0);
    images.forEach(({ sign }, g) => {
      const [dx, dy, dz] = [0, 1, 2].map((d) => sign[d] * direction[d]);
      const shift = direction[0] * piston.middle[0] + direction[1] * piston.middle[1];
      for (let p = 0; p < count; p++) {
        const o = 3 * p;
        const facing = character[g] * (dx * normals[o] + dy * normals[o + 1] + dz * normals[o + 2]);
        const phase = k * (dx * points[o] + dy * points[o + 1] + dz * points[o + 2] - shift);
        patternRe[p] += facing * Math.cos(phase);
        patternIm[p] += facing * Math.sin(phase);
      }
    });
    for (let i = 0; i < nodes.length; i++)
      for (let e = start[nodes[i]]; e < start[nodes[i] + 1]; e++) {
        const w = weight[e];
        const p = point[e];
        re += w * (m.re[i] * patternRe[p] - m.im[i] * patternIm[p]);
        im += w * (m.re[i] * patternIm[p] + m.im[i] * patternRe[p]);
      }
  });
  const scale = k / (2 * area);
  return { re: -scale * im, im: scale * re };
}
