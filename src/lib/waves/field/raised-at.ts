import type { Complex } from '../../numeric/complex.js';
import type { Vector } from '../mesh/symmetry.js';
import type { WaveProblem, WaveState } from '../solve/wave-problem.js';

/**
 * By how much the pressure at a point is raised beside what the jumps make of it: in a chamber that is full of more than air, where the
 * jump is raised by that front minus back, and nowhere else.
 */
export function raisedAt(
  { chambers }: Pick<WaveProblem, 'chambers'>,
  { raised }: WaveState,
  point: Vector,
  piston = 0
): Complex {
  const sum: Complex = { re: 0, im: 0 };
  chambers.forEach(({ low, high }, i) => {
    if (!point.every((x, d) => x > low[d] && x < high[d])) return;
    sum.re -= raised[piston][i].re;
    sum.im -= raised[piston][i].im;
  });
  return sum;
}
