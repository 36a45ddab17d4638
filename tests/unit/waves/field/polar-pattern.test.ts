import { describe, expect, it } from 'vitest';
import { polarPattern } from '../../../../src/lib/waves/field/polar-pattern.js';
import { transfer } from '../../../../src/lib/waves/field/transfer.js';
import { solveWave, waveProblem } from '../../../../src/lib/waves/solve/wave-problem.js';
import { close } from '../../../helpers/close.js';
import { coarse, db, OVAL, waveNumber } from '../wave-cases.js';

const all = Float64Array.from({ length: 13 }, (_, i) => -180 + 30 * i);

describe('polarPattern', () => {
  const problem = waveProblem(coarse('plate'), [{ outline: OVAL, middle: [0.02, 0, 0] }]);
  const state = solveWave(problem, waveNumber(2000));

  for (const distance of [undefined, 0.3])
    it(`is the level of what a listener hears at every angle, ${distance ?? 'far away'}`, () => {
      const levels = polarPattern(problem, state, { plane: 'length', distance }, all);
      all.forEach((angleDeg, i) =>
        close(levels[i], db(transfer(problem, state, { angleDeg, plane: 'length', distance })), {
          because: 'the same'
        })
      );
    });

  it('is alike to both sides across the width, where the cone is in the middle, and not along the length', () => {
    const angles = Float64Array.of(-60, 60);
    const across = polarPattern(problem, state, { plane: 'width' }, angles);
    close(across[0], across[1], { abs: 1e-9, because: 'mirror symmetry' });
    const along = polarPattern(problem, state, { plane: 'length' }, angles);
    expect(Math.abs(along[0] - along[1])).toBeGreaterThan(0.3);
  });

  it('is −6.02 dB all round a closed box at low frequency', () => {
    const box = waveProblem(coarse('box', 0.006), [{ outline: OVAL, middle: [0, 0, 0] }]);
    const levels = polarPattern(box, solveWave(box, waveNumber(100)), { plane: 'width' }, all);
    for (const level of levels)
      close(level, -6.02, {
        abs: 0.05,
        because: 'all round instead of to one side (Small 1972), 17 mm deep'
      });
  });

  it('is −Infinity where nothing is heard', () => {
    const silent = { ...state, jumps: state.jumps.map((classes) => classes.map(() => null)) };
    expect([...polarPattern(problem, silent, { plane: 'length' }, Float64Array.of(0, 45))]).toEqual([
      -Infinity,
      -Infinity
    ]);
  });
});
