import { describe, it } from 'vitest';
import { acousticLoad } from '../../src/lib/waves/field/acoustic-load.js';
import { farField } from '../../src/lib/waves/field/far-field.js';
import { solveWave, waveProblem } from '../../src/lib/waves/solve/wave-problem.js';
import { close } from '../helpers/close.js';
import plain from '../reference/waves-plain.json';
import { boxMesh, db, toward, waveNumber } from '../unit/waves/wave-cases.js';

describe('the same surfaces by another discretisation in NumPy and LAPACK (tests/reference/waves-plain.py)', () => {
  const [length, width] = plain.cone;
  for (const { form, sides, spacing, offset, rows } of plain.cases) {
    const walls = { sides: true, ends: form !== 'open shell', floor: form === 'box' };
    // the reference is finer: this is the spacing of a full mesh
    const [hx, hy, hz] = spacing.map((h) => h / 0.65);
    const mesh = boxMesh(sides as [number, number, number], walls, [hx, hy, hz]);
    const problem = waveProblem(mesh, [
      { outline: { shape: 'ellipse', length, width }, middle: [offset, 0, 0] }
    ]);
    it(form, () => {
      for (const { f, load, heard } of rows) {
        const state = solveWave(problem, waveNumber(f));
        const z = acousticLoad(problem, state);
        const size = Math.hypot(load.re, load.im);
        close(Math.hypot(z.re - load.re, z.im - load.im), 0, {
          abs: 0.03 * size,
          because: `two discretisations, load at ${f} Hz`
        });
        for (const { angleDeg, re, im } of heard)
          close(db(farField(problem, state, toward(angleDeg))), db({ re, im }), {
            abs: f > 5000 ? 0.45 : 0.2,
            because: `two discretisations, ${f} Hz at ${angleDeg}°`
          });
      }
    });
  }
});
