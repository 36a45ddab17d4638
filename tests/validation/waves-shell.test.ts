import { describe, expect, it } from 'vitest';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { complexArray } from '../../src/lib/numeric/complex-array.js';
import { ACCURACY, type Accuracy } from '../../src/lib/waves/mesh/accuracy.js';
import { evaluateFit, rationalFit } from '../../src/lib/numeric/rational-fit.js';
import { acousticLoad } from '../../src/lib/waves/field/acoustic-load.js';
import { transfer } from '../../src/lib/waves/field/transfer.js';
import { mountMesh } from '../../src/lib/waves/mesh/mount-mesh.js';
import { solveWave, waveProblem } from '../../src/lib/waves/solve/wave-problem.js';
import { solveMount, waveResponse } from '../../src/lib/waves/wave-solution.js';
import { close } from '../helpers/close.js';
import { AIR, IN_FRONT } from '../helpers/demo-installations.js';
import { C, db, powerRatio, waveNumber } from '../unit/waves/wave-cases.js';

function shell(offset = 0) {
  const mount = { kind: 'shell', length: 0.152, width: 0.03, height: 0.045, ends: 'closed', offset } as const;
  return { speaker: SPEAKERS.oval, mount, turn: 0 } as const;
}

/** Where the resistance of the load peaks between 1 and 2 kHz. */
function resonance(accuracy: Accuracy): number {
  const { mesh, pistons } = mountMesh(shell(), C, accuracy);
  const problem = waveProblem(mesh, pistons);
  const frequency = Float64Array.from({ length: 6 }, (_, i) => 1050 + 150 * i);
  const load = complexArray(frequency.length);
  frequency.forEach((f, i) => {
    const { re, im } = acousticLoad(problem, solveWave(problem, waveNumber(f)));
    load.re[i] = re;
    load.im[i] = im;
  });
  const grid = Float64Array.from({ length: 1001 }, (_, i) => 1000 + i);
  const [fine] = evaluateFit(rationalFit(frequency, [load], 1e-6), grid);
  const resistance = grid.map((f, i) => -f * fine.im[i]);
  return grid[resistance.indexOf(Math.max(...resistance))];
}

describe('a shell with closed ends', () => {
  it('resonates within 1 % of where a mesh twice as fine does', { timeout: 60000 }, () => {
    const full = resonance(ACCURACY.full);
    const finer = {
      ...ACCURACY.full,
      perWave: 2 * ACCURACY.full.perWave,
      cells: { free: 40, folded: 12 },
      budget: 4000
    };
    close(full, resonance(finer), { rel: 0.01, because: 'bar' });
    // c/(4·(H + W/2)), a fit with 3 %
    close(full, C / (4 * (0.045 + 0.015)), {
      rel: 0.06,
      because: 'the rule of thumb for other shells, and its 3 %'
    });
  });

  for (const offset of [0, 0.03]) {
    it(`keeps its energy and never drives the cone, ${offset * 1000} mm off the middle`, () => {
      const { curve } = solveMount(shell(offset), AIR, { loss: 0, accuracy: 'draft' });
      const { problem } = curve;
      for (const state of curve.states) expect(acousticLoad(problem, state).im).toBeLessThan(0);
      for (const f of [100, 1400, 3000])
        close(powerRatio(problem, solveWave(problem, waveNumber(f))), 1, {
          rel: 1e-4,
          because: 'an identity of the quadrature but for the table of the kernel (10⁻⁵) and the sphere'
        });
    });
  }

  it('is interpolated within 0.2 dB of solutions in between', { timeout: 60000 }, () => {
    const mount = solveMount(shell(0.03), AIR, { loss: 0 });
    const { problem } = mount.curve;
    const listener = { angleDeg: 60, plane: 'length' } as const;
    const frequency = Float64Array.of(60, 330, 1111, 1430, 2345, 3456, 4567, 5678, 6789, 7654, 8765, 9876);
    const curve = waveResponse(mount, listener, frequency, 'ideal');
    frequency.forEach((f, i) => {
      const dense = db(transfer(problem, solveWave(problem, waveNumber(f)), listener));
      close(db({ re: curve.re[i], im: curve.im[i] }), dense, { abs: 0.2, because: `bar, at ${f} Hz` });
    });
    expect(mount.curve.interpolationErrorDb).toBeLessThanOrEqual(0.1);
  });

  it('draft and full agree to 3 kHz within the stated error of the draft', { timeout: 60000 }, () => {
    const frequency = Float64Array.of(100, 300, 700, 1000, 2000, 2500, 3000);
    const [draft, full] = (['draft', 'full'] as const).map((accuracy) =>
      waveResponse(solveMount(shell(), AIR, { accuracy }), IN_FRONT, frequency, 'ideal')
    );
    frequency.forEach((_, i) =>
      close(db({ re: draft.re[i], im: draft.im[i] }), db({ re: full.re[i], im: full.im[i] }), {
        abs: ACCURACY.draft.errorDb,
        because: 'stated error'
      })
    );
  });
});
