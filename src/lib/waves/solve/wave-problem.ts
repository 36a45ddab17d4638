import { complexArray, type ComplexArray } from '../../numeric/complex-array.js';
import type { SquareMetres } from '../../units.js';
import type { Complex } from '../../numeric/complex.js';
import { chamberOf, fillChamber, type FilledChamber } from './filled-chamber.js';
import { patchMass, type PatchMass } from '../assembly/patch-mass.js';
import { pistonWeights } from '../assembly/piston-weights.js';
import { addRemainder, pointPairs, type PointPairs } from '../assembly/remainder.js';
import { staticMatrices, type StaticMatrices } from '../assembly/static-matrices.js';
import type { Chamber } from '../mesh/chamber.js';
import type { Patch } from '../mesh/patch.js';
import type { Piston } from '../mesh/piston.js';
import type { TriangleMesh } from '../mesh/triangle-mesh.js';
import { surfaceOf, type Surface } from '../mesh/surface.js';
import type { Vector } from '../mesh/symmetry.js';
import { outlineArea } from '../../acoustics/outline.js';
import { symmetricSolve } from '../../numeric/symmetric-solve.js';

/** A cone with what the equations need of it. */
export interface DrivingPiston extends Piston {
  /** Of its outline. */
  area: SquareMetres;
  /** ∫ φ_i over the cone per symmetry class, null where the cone does not excite it. */
  weights: (Float64Array | null)[];
}

/** A geometry and its cones with all that does not depend on frequency. */
export interface WaveProblem {
  surface: Surface;
  /** One or more. */
  pistons: DrivingPiston[];
  /** The middle of all cones, from which listeners are measured. */
  middle: Vector;
  /** Per symmetry class, null where no cone excites it. */
  statics: (StaticMatrices | null)[];
  pairs: PointPairs;
  /** Openings, each with ∫ φ_i·φ_j over it. */
  patches: (Patch & { mass: PatchMass })[];
  /** Rooms behind the cone that are closed but for openings and hold less air than they are large. */
  chambers: FilledChamber[];
  /** What lies behind the cone: free air, a room with openings, or a closed one. */
  behind: 'open' | 'vented' | 'closed';
  /** δ where a wave is solved for that dies away by e^{−δωt}; the loss then contains it. */
  damping: number;
  /** The loss factor η: the matrix is made with k·(1 − jη). */
  loss: number;
}

/** The solutions at one wave number: one for each piston that moves alone. */
export interface WaveState {
  k: number;
  /** Per piston and symmetry class the pressure jump over jωρ and the velocity of this piston, in metres. */
  jumps: (ComplexArray | null)[][];
  /** Per piston and chamber, by how much the jump there is raised beside `jumps`, which alone radiates. */
  raised: Complex[][];
  /** The largest residual of all systems (see `symmetricSolve`). */
  residual: number;
}

/**
 * @param pistons one or more cones, no two in the same place
 * @param loss η at least 0: what the mechanism inside a real shell takes, as a share
 * @param patches openings, as symmetric as the mesh
 * @param chambers rooms closed but for openings: sheets of the mesh, and which share of them holds air
 */
export function waveProblem(
  mesh: TriangleMesh,
  pistons: readonly Piston[],
  loss = 0,
  patches: readonly Patch[] = [],
  chambers: readonly Chamber[] = []
): WaveProblem {
  const surface = surfaceOf(mesh);
  const driving = pistons.map((piston) => ({
    ...piston,
    area: outlineArea(piston.outline),
    weights: pistonWeights(surface, piston)
  }));
  const [x, y, z] = [0, 1, 2].map(
    (d) => pistons.reduce((sum, { middle }) => sum + middle[d], 0) / pistons.length
  );
  const statics = staticMatrices(
    surface,
    surface.classes.map((_, c) => driving.some(({ weights }) => weights[c] !== null))
  );
  return {
    surface,
    pistons: driving,
    middle: [x, y, z],
    statics,
    pairs: pointPairs(surface),
    patches: patches.map((patch) => ({ ...patch, mass: patchMass(surface, patch) })),
    chambers: chambers.map((chamber) => chamberOf(surface, statics, chamber)),
    behind: chambers.some(({ behind }) => behind) ? 'vented' : surface.open ? 'open' : 'closed',
    loss,
    damping: 0
  };
}

/**
 * Solves ∂p/∂n = −jωρ·v on the surface for every cone that moves with v while the others stand still: A(k)·m = −q per symmetry
 * class, with m the pressure jump front minus back over jωρ·v. k = 0 gives the potential flow.
 *
 * @param k wave number ω/c in rad/m; above 0 on a closed surface, at least 0 on an open one
 * @throws RangeError if the equations are singular
 */
export function solveWave(problem: WaveProblem, k: number): WaveState {
  const { surface, pistons, pairs, loss, chambers } = problem;
  const matrices = lowMatrices(problem, k);
  if (k > 0) addRemainder(surface, pairs, k, loss, matrices);
  const filled = chambers.map((chamber) => fillChamber(chamber, k, loss, matrices));
  addPatches(problem, k, matrices);
  const jumps = pistons.map(() => surface.classes.map((): ComplexArray | null => null));
  let residual = 0;
  matrices.forEach((a, c) => {
    if (!a) return;
    const excited = [...pistons.keys()].filter((p) => pistons[p].weights[c] !== null);
    const sides = excited.map((p) => pistons[p].weights[c]!.map((x) => -x));
    symmetricSolve(a, sides).forEach((solved, i) => {
      jumps[excited[i]][c] = solved.x;
      residual = Math.max(residual, solved.residual);
    });
  });
  // the last one filled saw the matrix of those before it
  const raised = jumps.map((own) =>
    filled
      .toReversed()
      .map((chamber) => chamber.settle(own))
      .toReversed()
  );
  return { k, jumps, raised, residual };
}

/** −(jωρ/Z)·∫ φ_i·φ_j of every opening, to the upper triangle. */
function addPatches(
  { surface, patches, damping }: WaveProblem,
  k: number,
  matrices: (ComplexArray | null)[]
): void {
  for (const { admittance, mass } of patches) {
    const { re, im } = admittance(k, damping, mass.area);
    matrices.forEach((matrix, c) => {
      if (!matrix) return;
      const n = surface.classes[c].nodes.length;
      const entries = mass.entries[c];
      for (let e = 0; e < entries.length; e += 3) {
        const at = entries[e] * n + entries[e + 1];
        matrix.re[at] -= re * entries[e + 2];
        matrix.im[at] -= im * entries[e + 2];
      }
    });
  }
}

/** Per symmetry class A0 + k²·(1 − jη)²·A1. */
function lowMatrices({ surface, statics, loss }: WaveProblem, k: number): (ComplexArray | null)[] {
  const squareRe = k * k * (1 - loss * loss);
  const squareIm = -2 * k * k * loss;
  return surface.classes.map(({ nodes }, c) => {
    const fixed = statics[c];
    if (!fixed) return null;
    const { a0, a1 } = fixed;
    const { re, im } = complexArray(nodes.length ** 2);
    for (let i = 0; i < re.length; i++) {
      re[i] = a0[i] + squareRe * a1[i];
      im[i] = squareIm * a1[i];
    }
    return { re, im };
  });
}
