import { describe, it } from 'vitest';
import { farField } from '../../../../src/lib/waves/field/far-field.js';
import { fieldAt } from '../../../../src/lib/waves/field/field-at.js';
import { transfer } from '../../../../src/lib/waves/field/transfer.js';
import { solveWave, waveProblem } from '../../../../src/lib/waves/solve/wave-problem.js';
import { close } from '../../../helpers/close.js';
import { coarse, OVAL, toward, waveNumber } from '../wave-cases.js';

const piston = { outline: OVAL, middle: [0.01, 0, 0] } as const;

describe('fieldAt', () => {
  for (const form of ['plate', 'shell'] as const)
    it(`tends to the far field far away, ${form}`, () => {
      const problem = waveProblem(coarse(form, form === 'shell' ? 0.008 : 0.012), [piston]);
      const state = solveWave(problem, waveNumber(2000));
      for (const angleDeg of [0, 50, 130]) {
        const near = transfer(problem, state, { angleDeg, plane: 'length', distance: 100 });
        const far = farField(problem, state, toward(angleDeg));
        const size = Math.hypot(far.re, far.im);
        close(near.re, far.re, {
          abs: 0.02 * size,
          because: 'kr² is 4·10⁻³ over 100 m; two quadratures at λ/14'
        });
        close(near.im, far.im, {
          abs: 0.02 * size,
          because: 'kr² is 4·10⁻³ over 100 m; two quadratures at λ/14'
        });
      }
    });

  it('jumps by m across the surface', () => {
    const problem = waveProblem(coarse('plate'), [piston]);
    const state = solveWave(problem, waveNumber(500));
    const { mesh, classes } = problem.surface;
    const at = [0.03, 0.02];
    // the value of m there, from the hats of the quarter: all classes, this image
    const above = fieldAt(problem, state, [at[0], at[1], 2e-4]);
    const below = fieldAt(problem, state, [at[0], at[1], -2e-4]);
    let jump = 0;
    for (let t = 0; t < mesh.triangles.length; t += 3) {
      const p = [0, 1, 2].map((i) =>
        mesh.points.subarray(3 * mesh.triangles[t + i], 3 * mesh.triangles[t + i] + 2)
      );
      const cross = (a: ArrayLike<number>, b: ArrayLike<number>, c: ArrayLike<number>) =>
        (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
      const shares = [cross(at, p[1], p[2]), cross(p[0], at, p[2]), cross(p[0], p[1], at)];
      const whole = cross(p[0], p[1], p[2]);
      if (shares.some((share) => share < 0)) continue;
      classes.forEach(({ nodes }, c) => {
        const m = state.jumps[0][c];
        shares.forEach((share, i) => {
          const index = nodes.indexOf(mesh.triangles[t + i]);
          if (m && index >= 0) jump += (share / whole) * m.re[index];
        });
      });
      break;
    }
    close(above.re - below.re, jump, { rel: 0.03, because: 'so near, the halving of triangles costs 1 %' });
  });

  it('of a closed box is nothing inside for a wave that is outside only: at low frequency the inside is a spring', () => {
    const problem = waveProblem(coarse('box', 0.006), [{ outline: OVAL, middle: [0, 0, 0] }]);
    const k = waveNumber(100);
    const state = solveWave(problem, k);
    const inside = fieldAt(problem, state, [0.003, 0.002, -0.01]);
    // p = −ρc²·S·x/V of the inside with x = v/(jω): p/(jωρv) = S/(k²V), pushed outward p falls
    close(inside.re, problem.pistons[0].area / (k * k * 0.042 * 0.029 * 0.017), {
      rel: 0.02,
      because: 'well below the first standing wave'
    });
  });
});
