import { complexArray, type ComplexArray } from '../../numeric/complex-array.js';
import type { SquareMetres } from '../../units.js';
import { pistonWeights } from '../assembly/piston-weights.js';
import { addRemainder, pointPairs, type PointPairs } from '../assembly/remainder.js';
import { staticMatrices, type StaticMatrices } from '../assembly/static-matrices.js';
import type { Piston } from '../mesh/piston.js';
import type { TriangleMesh } from '../mesh/triangle-mesh.js';
import { surfaceOf, type Surface } from '../mesh/surface.js';
import { outlineArea } from '../../acoustics/outline.js';
import { symmetricSolve } from '../../numeric/symmetric-solve.js';

/** A geometry and its cone with all that does not depend on frequency. */
export interface WaveProblem {
  surface: Surface;
  piston: Piston;
  /** Area of the cone. */
  area: SquareMetres;
  /** ∫ φ_i over the cone per symmetry class, null where the cone does not excite it. */
  weights: (Float64Array | null)[];
  /** Per symmetry class, null where it is not excited. */
  statics: (StaticMatrices | null)[];
  pairs: PointPairs;
  /** The loss factor η: the matrix is made with k·(1 − jη). */
  loss: number;
}

/** The solution at one wave number: the pressure jump of every class over jωρ and the cone's velocity, in metres. */
export interface WaveState {
  k: number;
  jumps: (ComplexArray | null)[];
  /** The larger residual of the classes' systems (see `symmetricSolve`). */
  residual: number;
}

/**
 * @param loss η at least 0: what the mechanism inside a real shell takes, as a share
 */
export function waveProblem(mesh: TriangleMesh, piston: Piston, loss = 0): WaveProblem {
  const surface = surfaceOf(mesh);
  const weights = pistonWeights(surface, piston);
  return {
    surface,
    piston,
    area: outlineArea(piston.outline),
    weights,
    statics: staticMatrices(
      surface,
      weights.map((q) => q !== null)
    ),
    pairs: pointPairs(surface),
    loss
  };
}

/**
 * Solves ∂p/∂n = −jωρ·v on the surface for a cone that moves with v: A(k)·m = −q per symmetry class, with m the pressure
 * jump front minus back over jωρ·v. k = 0 gives the potential flow.
 *
 * @param k wave number ω/c in rad/m; above 0 on a closed surface, at least 0 on an open one
 * @throws RangeError if the equations are singular
 */
export function solveWave(problem: WaveProblem, k: number): WaveState {
  const { surface, weights, statics, pairs, loss } = problem;
  // k²·(1 − jη)²
  const squareRe = k * k * (1 - loss * loss);
  const squareIm = -2 * k * k * loss;
  const matrices = surface.classes.map(({ nodes }, c) => {
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
  if (k > 0) addRemainder(surface, pairs, k, loss, matrices);
  let residual = 0;
  const jumps = matrices.map((a, c) => {
    if (!a) return null;
    const solved = symmetricSolve(
      a,
      weights[c]!.map((x) => -x)
    );
    residual = Math.max(residual, solved.residual);
    return solved.x;
  });
  return { k, jumps, residual };
}
