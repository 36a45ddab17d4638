import { ACCURACY } from '../../../src/lib/waves/mesh/accuracy.js';
import { mountMesh } from '../../../src/lib/waves/mesh/mount-mesh.js';
import { USUAL_LOSS } from '../../../src/lib/acoustics/mounts/loss.js';
import { solveWave, waveProblem } from '../../../src/lib/waves/solve/wave-problem.js';
import { referenceShell } from './time-waves.js';

/** What a mesh costs, in seconds. */
export interface Cost {
  unknowns: number;
  /** Mesh and matrices that do not depend on frequency. */
  matrices: number;
  /** One frequency. */
  solution: number;
}

const C = 343.2;
const K = (2 * Math.PI * ACCURACY.full.highest) / C;

/**
 * What the reference shell costs with its speaker in the middle (one system a frequency) on a mesh whose spacing is that of
 * `full` over `density`; the shortest of the times that fit
 * into `seconds`, three at least where it is above 0.
 */
export function costOf(density: number, seconds: number): Cost {
  const { perWave, cells } = ACCURACY.full;
  const accuracy = {
    ...ACCURACY.full,
    perWave: density * perWave,
    cells: { free: density * cells.free, folded: density * cells.folded },
    budget: Infinity
  };
  const { mesh, pistons } = mountMesh(referenceShell(0), C, accuracy);
  const problem = waveProblem(mesh, pistons, USUAL_LOSS);
  const [{ nodes }] = problem.surface.classes.filter((_, c) => problem.pistons[0].weights[c]);
  return {
    unknowns: nodes.length,
    matrices: shortest(() => waveProblem(mesh, pistons, USUAL_LOSS), seconds),
    solution: shortest(() => solveWave(problem, K), seconds)
  };
}

function shortest(operation: () => unknown, seconds: number): number {
  let least = Infinity;
  const end = performance.now() + 1000 * seconds;
  let left = seconds > 0 ? 3 : 1;
  do {
    const begun = performance.now();
    operation();
    least = Math.min(least, (performance.now() - begun) / 1000);
  } while (--left > 0 || performance.now() < end);
  return least;
}
