import { describe, it } from 'vitest';
import { acousticLoad } from '../../src/lib/waves/field/acoustic-load.js';
import { farField } from '../../src/lib/waves/field/far-field.js';
import { ACCURACY } from '../../src/lib/waves/mesh/accuracy.js';
import { mountMesh } from '../../src/lib/waves/mesh/mount-mesh.js';
import { solveWave, waveProblem } from '../../src/lib/waves/solve/wave-problem.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { close } from '../helpers/close.js';
import { C } from '../unit/waves/wave-cases.js';

describe('a whole rectangle moving (DNV-RP-C205, added mass of rectangular plates, values from memory)', () => {
  for (const [ratio, ca] of [
    [1, 0.579],
    [1.5, 0.69],
    [2, 0.757]
  ]) {
    const [a, b] = [0.03, 0.03 * ratio];
    const plate = { shape: 'rectangle', length: b, width: a } as const;
    const installation = {
      speaker: { ...SPEAKERS.oval, frame: plate, cone: plate },
      mount: { kind: 'free' },
      turn: 0
    } as const;
    const { mesh, pistons } = mountMesh(installation, C, ACCURACY.full);
    const problem = waveProblem(mesh, pistons);

    it(`b/a = ${ratio}: added mass ${ca}·ρ·(π/4)·a²·b`, () => {
      const z = acousticLoad(problem, solveWave(problem, 0)).re;
      close((z * (a * b) ** 2) / ((Math.PI / 4) * a * a * b), ca, { rel: 0.01, because: 'bar' });
    });

    it(`b/a = ${ratio}: arm C_A·π·a/8`, () => {
      const k = 1e-3 / a;
      close(farField(problem, solveWave(problem, k), [0, 0, 1]).im / k, (ca * Math.PI * a) / 8, {
        rel: 0.01,
        because: 'bar'
      });
    });
  }
});
