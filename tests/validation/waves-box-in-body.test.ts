import { expect, test } from 'vitest';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import type { Installation } from '../../src/lib/acoustics/installation.js';
import { farField } from '../../src/lib/waves/field/far-field.js';
import { ACCURACY, type Accuracy } from '../../src/lib/waves/mesh/accuracy.js';
import { mountMesh } from '../../src/lib/waves/mesh/mount-mesh.js';
import { solveWave, waveProblem } from '../../src/lib/waves/solve/wave-problem.js';
import { close } from '../helpers/close.js';
import { C, db, toward, waveNumber } from '../unit/waves/wave-cases.js';

/** The least box there is, 15 × 11 × 3.5 mm, in a body of 128 × 32 × 30 mm. */
const SMALL: Installation = {
  speaker: SPEAKERS['phone-11x15'],
  mount: {
    ...{ kind: 'box', length: 0.015, width: 0.011, depth: 0.0035 },
    body: { length: 0.128, width: 0.032, height: 0.03, openings: 0.0012 }
  },
  turn: 0
};

function levels(accuracy: Accuracy, frequency: readonly number[]): number[] {
  const { mesh, pistons, patches, chambers } = mountMesh(SMALL, C, accuracy);
  const problem = waveProblem(mesh, pistons, 0.003, patches, chambers);
  return frequency.map((f) => db(farField(problem, solveWave(problem, waveNumber(f)), toward(60, 90))));
}

test('a small box in a long body is meshed by itself, up to the end of a draft, within its budget', () => {
  for (const accuracy of [ACCURACY.draft, ACCURACY.full]) {
    const { mesh, highest } = mountMesh(SMALL, C, accuracy);
    expect(highest).toBeGreaterThanOrEqual(accuracy.highest);
    expect(mesh.points.length / 3).toBeLessThan(1.1 * accuracy.budget);
  }
});

test('its draft is that of a mesh half as fine again everywhere, within the error of a draft', () => {
  const frequency = [400, 1700];
  const fine = levels(
    { ...ACCURACY.draft, perWave: 12, cells: { free: 12, folded: 6 }, budget: 700 },
    frequency
  );
  levels(ACCURACY.draft, frequency).forEach((level, i) =>
    close(level, fine[i], {
      abs: 0.3,
      because: 'half of the stated error; 0.04 dB is seen against a mesh twice as fine'
    })
  );
});
