import { ACCURACY, type AccuracyName } from '../../src/lib/waves/accuracy.js';
import { solveCurve } from '../../src/lib/waves/curve/wave-curve.js';
import { mountMesh } from '../../src/lib/waves/mesh/mount-mesh.js';
import { solveWave, waveProblem, type WaveProblem } from '../../src/lib/waves/solve/wave-problem.js';
import { solveMount, waveResponse } from '../../src/lib/waves/wave-solution.js';
import { fftFrequencies } from '../../src/lib/numeric/impulse-response.js';
import { AIR, IN_FRONT, ovalIn } from '../helpers/demo-installations.js';
import type { SpeedCase } from './speed-case.js';

const C = 343.2;

/** The reference shell, 152 × 30 × 45 mm inside with closed ends, the speaker in the roof. */
const shell = (offset: number) =>
  ovalIn({ kind: 'shell', length: 0.152, width: 0.03, height: 0.045, ends: 'closed', offset });

function problemOf(offset: number, accuracy: AccuracyName): WaveProblem {
  const { mesh, piston } = mountMesh(shell(offset), C, ACCURACY[accuracy]);
  return waveProblem(mesh, piston, 0.01);
}

const places = [
  ['central', 0],
  ['off-centre', 0.03]
] as const;

/** What a wave solution costs on one core: the parts and the whole. */
const cases: SpeedCase[] = (['full', 'draft'] as const).flatMap((accuracy) =>
  places.flatMap(([place, offset]) => [
    {
      name: `waves: matrices, shell ${place}, ${accuracy}`,
      prepare: () => () => problemOf(offset, accuracy)
    },
    {
      name: `waves: one frequency, shell ${place}, ${accuracy}`,
      prepare: () => {
        const problem = problemOf(offset, accuracy);
        return () => solveWave(problem, (2 * Math.PI * ACCURACY[accuracy].highest) / C);
      }
    },
    {
      name: `waves: all frequencies, shell ${place}, ${accuracy}`,
      prepare: () => {
        const problem = problemOf(offset, accuracy);
        return () => solveCurve(problem, C, ACCURACY[accuracy].highest);
      }
    },
    {
      name: `waves: whole curve, shell ${place}, ${accuracy}`,
      prepare: () => () => solveMount(shell(offset), AIR, { accuracy })
    },
    {
      name: `waves: 2049 bins of it, shell ${place}, ${accuracy}`,
      prepare: () => {
        const mount = solveMount(shell(offset), AIR, { accuracy });
        const bins = fftFrequencies(4096, 48000);
        return () => waveResponse(mount, IN_FRONT, bins);
      }
    }
  ])
);

export default cases;
