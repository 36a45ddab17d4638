import type { Complex } from '../../numeric/complex.js';
import type { WaveProblem, WaveState } from '../solve/wave-problem.js';

/**
 * An element of the matrix of acoustic impedances over jωρ, both faces: Z_ij/(jωρ) = ∫_i m_j dS/(S_i·S_j), in 1/m, with m_j of
 * `solveWave`. So that Z_ij = jωρ·(what is returned) in Pa·s/m³ is the pressure at piston i over the volume velocity of piston
 * j. The matrix is symmetric (reciprocity), and the real part of Z_ii is never negative.
 *
 * @param at i, the piston that is pressed on
 * @param by j, the piston that moves
 */
export function acousticLoad(
  { surface, pistons, chambers }: WaveProblem,
  { jumps, raised }: WaveState,
  at = 0,
  by = 0
): Complex {
  let [re, im] = [0, 0];
  pistons[at].weights.forEach((q, c) => {
    const m = jumps[by][c];
    if (!m || !q) return;
    for (let i = 0; i < q.length; i++) {
      re += q[i] * m.re[i];
      im += q[i] * m.im[i];
    }
  });
  chambers.forEach(({ class: even, wall }, i) => {
    const q = pistons[at].weights[even];
    if (!q) return;
    const pressed = wall.reduce((sum, one, i) => sum + one * q[i], 0);
    re += pressed * raised[by][i].re;
    im += pressed * raised[by][i].im;
  });
  const scale = surface.copies / (pistons[at].area * pistons[by].area);
  return { re: scale * re, im: scale * im };
}
