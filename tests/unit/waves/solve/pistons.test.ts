import { describe, expect, it } from 'vitest';
import type { Piston } from '../../../../src/lib/waves/mesh/piston.js';
import { acousticLoad } from '../../../../src/lib/waves/field/acoustic-load.js';
import { farField } from '../../../../src/lib/waves/field/far-field.js';
import { fieldAt } from '../../../../src/lib/waves/field/field-at.js';
import { fieldOnGrid } from '../../../../src/lib/waves/field/field-on-grid.js';
import { solveWave, waveProblem } from '../../../../src/lib/waves/solve/wave-problem.js';
import { close } from '../../../helpers/close.js';
import { coarse, OVAL, toward, waveNumber } from '../wave-cases.js';

const ROUNDING = 'the same equations and right sides, rounded otherwise';
const rectangle = (length: number, x: number): Piston => ({
  outline: { shape: 'rectangle', length, width: 0.02 },
  middle: [x, 0.002, 0]
});
const one = rectangle(0.03, 0.02);
const halves = [rectangle(0.012, 0.011), rectangle(0.018, 0.026)];
type Complex = ReturnType<typeof acousticLoad>;

function same(got: Complex, expected: Complex, because = ROUNDING) {
  const size = Math.hypot(expected.re, expected.im);
  close(Math.hypot(got.re - expected.re, got.im - expected.im), 0, { abs: 1e-9 * size, because });
}

/** Σ share·value */
function sum(values: Complex[], shares: number[]): Complex {
  return {
    re: values.reduce((s, { re }, i) => s + shares[i] * re, 0),
    im: values.reduce((s, { im }, i) => s + shares[i] * im, 0)
  };
}

describe('several pistons', () => {
  for (const form of ['plate', 'shell'] as const) {
    const mesh = coarse(form, 0.015);
    const [whole, split] = [[one], halves].map((pistons) => waveProblem(mesh, pistons, 0.01));
    const state = solveWave(whole, waveNumber(1700));
    const parts = solveWave(split, waveNumber(1700));
    const areas = split.pistons.map(({ area }) => area);
    const total = whole.pistons[0].area;

    it(`two parts of a cone that move together are the cone: ${form}`, () => {
      const loads = [0, 1].flatMap((at) => [0, 1].map((by) => acousticLoad(split, parts, at, by)));
      const shares = [0, 1].flatMap((at) => [0, 1].map((by) => (areas[at] * areas[by]) / total ** 2));
      same(sum(loads, shares), acousticLoad(whole, state));
      const point = [0.03, -0.01, 0.05] as const;
      same(
        sum(
          [0, 1].map((piston) => fieldAt(split, parts, point, piston)),
          [1, 1]
        ),
        fieldAt(whole, state, point)
      );
    });

    it(`far away too, measured from the middle of all cones: ${form}`, () => {
      const d = toward(50, 30);
      const together = sum(
        [0, 1].map((piston) => farField(split, parts, d, piston)),
        areas.map((area) => area / total)
      );
      const k = state.k;
      // the middle of the two middles is not that of the cone
      const ahead = k * d[0] * (split.middle[0] - whole.middle[0]);
      const { re, im } = farField(whole, state, d);
      same(together, {
        re: re * Math.cos(ahead) + im * Math.sin(ahead),
        im: im * Math.cos(ahead) - re * Math.sin(ahead)
      });
    });

    it(`and on a section: ${form}`, () => {
      const grid = {
        plane: 'length',
        left: -0.1,
        right: 0.1,
        bottom: 0.01,
        top: 0.09,
        columns: 6,
        rows: 4
      } as const;
      const images = [0, 1].map((piston) => fieldOnGrid(split, parts, grid, 0, piston));
      const image = fieldOnGrid(whole, state, grid);
      const most = Math.max(...image.re.map(Math.abs));
      image.re.forEach((value, p) =>
        close(images[0].re[p] + images[1].re[p], value, { abs: 1e-6 * most, because: 'single precision' })
      );
    });
  }

  it('have a symmetric matrix of impedances, of cones of any outline and any symmetry', () => {
    const pistons: Piston[] = [
      { outline: OVAL, middle: [0.02, 0.001, 0] },
      { outline: { shape: 'round', diameter: 0.011 }, middle: [-0.05, 0, 0] },
      { outline: { shape: 'round', diameter: 0.016 }, middle: [0, 0, 0] }
    ];
    const problem = waveProblem(coarse('shell', 0.015), pistons);
    const state = solveWave(problem, waveNumber(2500));
    for (const [at, by] of [
      [0, 1],
      [0, 2],
      [1, 2]
    ]) {
      const [forth, back] = [acousticLoad(problem, state, at, by), acousticLoad(problem, state, by, at)];
      expect(Math.hypot(forth.re, forth.im)).toBeGreaterThan(0);
      same(forth, back, 'reciprocity');
    }
  });

  it('do not change each other: each alone gives the same', () => {
    const mesh = coarse('plate', 0.015);
    const both = waveProblem(mesh, halves);
    const k = waveNumber(1700);
    halves.forEach((piston, p) => {
      const alone = waveProblem(mesh, [piston]);
      same(acousticLoad(both, solveWave(both, k), p, p), acousticLoad(alone, solveWave(alone, k)));
    });
  });
});
