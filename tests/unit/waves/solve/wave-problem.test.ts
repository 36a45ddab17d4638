import { describe, expect, it } from 'vitest';
import { acousticLoad } from '../../../../src/lib/waves/field/acoustic-load.js';
import { farField } from '../../../../src/lib/waves/field/far-field.js';
import { unfoldMesh } from '../../../helpers/unfold-mesh.js';
import { solveWave, waveProblem, type WaveProblem } from '../../../../src/lib/waves/solve/wave-problem.js';
import { close } from '../../../helpers/close.js';
import { coarse, ellipseMesh, OVAL, powerRatio, toward, waveNumber } from '../wave-cases.js';

const PISTON = { outline: OVAL, middle: [0.02, 0.001, 0] } as const;

describe('a quarter equals the whole to rounding, wherever the cone is', () => {
  for (const form of ['plate', 'round', 'shell', 'open shell', 'box'] as const)
    it(form, () => {
      const mesh = coarse(form, form === 'box' ? 0.008 : 0.015);
      const piston = form === 'box' ? { outline: OVAL, middle: [0.002, 0.001, 0] as const } : PISTON;
      const quarter = waveProblem(mesh, [piston], 0.02);
      for (const other of [unfoldMesh(mesh, [mesh.mirrors[1]]), unfoldMesh(mesh)]) {
        const whole = waveProblem(other, [piston], 0.02);
        for (const f of [200, 5000]) {
          const [a, b] = [quarter, whole].map((problem) => solveWave(problem, waveNumber(f)));
          const pairs = [
            [farField(quarter, a, toward(40, 20)), farField(whole, b, toward(40, 20))],
            [acousticLoad(quarter, a), acousticLoad(whole, b)]
          ];
          for (const [got, expected] of pairs)
            close(Math.hypot(got.re - expected.re, got.im - expected.im), 0, {
              abs: 1e-9 * Math.hypot(expected.re, expected.im),
              because: 'the same equations in another order'
            });
        }
      }
    });
});

describe('energy and passivity', () => {
  for (const form of ['plate', 'shell', 'box'] as const)
    it(`power at the cone equals that far away, ${form}`, () => {
      const mesh = coarse(form, form === 'box' ? 0.006 : 0.012);
      const problem = waveProblem(mesh, [form === 'box' ? { outline: OVAL, middle: [0, 0, 0] } : PISTON]);
      for (const f of [100, 1000, 4000]) {
        const state = solveWave(problem, waveNumber(f));
        expect(acousticLoad(problem, state).im).toBeLessThan(0);
        close(powerRatio(problem, state), 1, {
          rel: 1e-4,
          because: 'an identity but for the table of the kernel'
        });
      }
    });
});

describe('reciprocity', () => {
  it('two cones of a shell: the same transfer either way, from quarter and whole', () => {
    const mesh = coarse('shell', 0.015);
    const [here, there] = [
      PISTON,
      { outline: { shape: 'round', diameter: 0.011 }, middle: [-0.05, -0.003, 0] } as const
    ];
    const k = waveNumber(2500);
    /** ∫ m over the other cone. */
    const transfer = (source: WaveProblem, receiver: WaveProblem) => {
      const [jumps] = solveWave(source, k).jumps;
      let [re, im] = [0, 0];
      jumps.forEach((m, c) =>
        m?.re.forEach((x, i) => {
          re += x * receiver.pistons[0].weights[c]![i];
          im += m.im[i] * receiver.pistons[0].weights[c]![i];
        })
      );
      return { re: re * source.surface.images.length, im: im * source.surface.images.length };
    };
    const [a, b] = [here, there].map((piston) => waveProblem(mesh, [piston]));
    const [c, d] = [here, there].map((piston) => waveProblem(unfoldMesh(mesh), [piston]));
    const forth = transfer(a, b);
    const back = transfer(d, c);
    close(forth.re, back.re, { rel: 1e-9, because: 'identity' });
    close(forth.im, back.im, { rel: 1e-9, because: 'identity' });
  });
});

describe('front and back', () => {
  it('a plate sends the negative backward: which way the magnet faces is a sign', () => {
    const problem = waveProblem(coarse('plate'), [PISTON]);
    const state = solveWave(problem, waveNumber(3000));
    for (const angle of [0, 25, 70]) {
      const front = farField(problem, state, toward(angle));
      const back = farField(problem, state, toward(180 - angle));
      close(back.re, -front.re, { rel: 1e-9, because: 'symmetry of a flat plate' });
      close(back.im, -front.im, { rel: 1e-9, because: 'symmetry of a flat plate' });
    }
  });
});

describe('convergence', () => {
  it('the load of a whole disc nears (8/3)·a³ with an order of at least 1.4', { timeout: 60000 }, () => {
    const errors = [0.2, 0.1, 0.05].map((h) => {
      const problem = waveProblem(ellipseMesh(1, 1, h), [
        { outline: { shape: 'round', diameter: 2 }, middle: [0, 0, 0] }
      ]);
      return 1 - (acousticLoad(problem, solveWave(problem, 0)).re * Math.PI ** 2) / (8 / 3);
    });
    for (let i = 1; i < errors.length; i++) {
      expect(errors[i]).toBeGreaterThan(0);
      expect(Math.log2(errors[i - 1] / errors[i])).toBeGreaterThan(1.4);
    }
  });
});
