import { describe, it } from 'vitest';
import { gaussLegendre } from '../../src/lib/numeric/gauss-legendre.js';
import { acousticLoad } from '../../src/lib/waves/field/acoustic-load.js';
import { solveWave, waveProblem } from '../../src/lib/waves/solve/wave-problem.js';
import { close } from '../helpers/close.js';
import { ellipseMesh } from '../unit/waves/wave-cases.js';

// E. T. Copson, Proc. Edinburgh Math. Soc. 8 (1947) 14, from memory: the potential of a disc of radius 1 whose normal velocity
// is v(s) is (2/π)·∫_ρ^1 g(t)/√(t² − ρ²) dt on its face, g(t) = ∫_0^t s·v(s)/√(t² − s²) ds; both faces carry ρ·8·∫ g² dt
function exact(b: number): number {
  const { nodes, weights } = gaussLegendre(60);
  let rim = 0;
  nodes.forEach((node, i) => {
    const s = (node + 1) / 2;
    const t = b + (1 - b) * s * s;
    rim += weights[i] * (1 - b) * s * (t - Math.sqrt(t * t - b * b)) ** 2;
  });
  return 8 * (b ** 3 / 3 + rim);
}

describe('air load of a round cone in the middle of a round plate at low frequency', () => {
  for (const [b, rel] of [
    [1, 0.006],
    [0.7, 0.01],
    [0.5, 0.015],
    [0.3, 0.03]
  ])
    it(`cone of ${b} of the plate`, () => {
      const problem = waveProblem(ellipseMesh(1, 1, 0.1), [
        { outline: { shape: 'round', diameter: 2 * b }, middle: [0, 0, 0] }
      ]);
      const z = acousticLoad(problem, solveWave(problem, 0)).re;
      close(z * problem.pistons[0].area ** 2, exact(b), {
        rel,
        because: 'a tenth of the radius is a coarse step for a small cone'
      });
    });
});
