import type { Complex } from '../../numeric/complex.js';
import type { WaveProblem, WaveState } from '../solve/wave-problem.js';

/**
 * The acoustic load of the cone over jωρ, both faces: Za/(jωρ) = ∫_cone m dS/S², in 1/m, with m of `solveWave`. So that
 * Za = jωρ·(what is returned) in Pa·s/m³, pressure over volume velocity; its real part is never negative.
 */
export function acousticLoad({ surface, weights, area }: WaveProblem, { jumps }: WaveState): Complex {
  let [re, im] = [0, 0];
  jumps.forEach((m, c) => {
    if (!m) return;
    const q = weights[c]!;
    for (let i = 0; i < q.length; i++) {
      re += q[i] * m.re[i];
      im += q[i] * m.im[i];
    }
  });
  const scale = surface.images.length / (area * area);
  return { re: scale * re, im: scale * im };
}
