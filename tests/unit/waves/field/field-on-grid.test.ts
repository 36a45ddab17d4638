import { describe, expect, it } from 'vitest';
import { farField } from '../../../../src/lib/waves/field/far-field.js';
import { fieldAt } from '../../../../src/lib/waves/field/field-at.js';
import { fieldOnGrid, type FieldImage } from '../../../../src/lib/waves/field/field-on-grid.js';
import { columnAt, rowAt, type SectionGrid } from '../../../../src/lib/waves/field/section-grid.js';
import { solveWave, waveProblem, type WaveProblem } from '../../../../src/lib/waves/solve/wave-problem.js';
import { close } from '../../../helpers/close.js';
import { coarse, OVAL, toward, waveNumber } from '../wave-cases.js';

const GRID = {
  plane: 'length',
  left: -0.12,
  right: 0.12,
  bottom: -0.1,
  top: 0.101,
  columns: 24,
  rows: 20
} as const;

/** The point of a section in the coordinates of the mesh. */
function pointOf(grid: SectionGrid, { middle }: WaveProblem, column: number, row: number) {
  const [x, y] = middle;
  const across = columnAt(grid, column);
  return (grid.plane === 'length' ? [across, y, rowAt(grid, row)] : [x, across, rowAt(grid, row)]) as [
    number,
    number,
    number
  ];
}

/** The largest difference to `fieldAt` over the largest pressure, at every `step`th pixel. */
function worst(
  problem: WaveProblem,
  k: number,
  grid: SectionGrid,
  step: number,
  skip = (p: readonly number[]) => p[2] === 0
) {
  const state = solveWave(problem, k);
  const image = fieldOnGrid(problem, state, grid);
  let [most, miss] = [0, 0];
  for (let pixel = 0; pixel < grid.columns * grid.rows; pixel += step) {
    const at = pointOf(grid, problem, pixel % grid.columns, Math.floor(pixel / grid.columns));
    if (skip(at)) continue;
    const p = fieldAt(problem, state, at);
    most = Math.max(most, Math.hypot(p.re, p.im));
    miss = Math.max(miss, Math.hypot(p.re - image.re[pixel], p.im - image.im[pixel]));
  }
  return miss / most;
}

describe('fieldOnGrid', () => {
  const cases = [
    ['plate', [0, 0], 0.016],
    ['plate', [0.02, 0.013], 0.016],
    ['round', [0, 0], 0.01],
    ['shell', [0.03, 0], 0.01],
    ['box', [0, 0], 0.006]
  ] as const;
  for (const [form, middle, h] of cases)
    for (const plane of ['length', 'width'] as const)
      it(`is what fieldAt gives at every pixel: ${form}, cone at ${middle.join(', ')}, along the ${plane}`, () => {
        const problem = waveProblem(coarse(form, h), [{ outline: OVAL, middle: [...middle, 0] }]);
        // about the middle and not: the one takes pairs of images together
        for (const left of [-0.12, -0.103])
          close(worst(problem, waveNumber(2500), { ...GRID, plane, left }, 37), 0, {
            abs: 0.01,
            because:
              'both take edge midpoints from two edges on, and nearer the closed form against halved triangles'
          });
      });

  it('is right on both sides a pixel from a wall', () => {
    const problem = waveProblem(coarse('shell', 0.01), [{ outline: OVAL, middle: [0, 0, 0] }]);
    // rows 0.5 mm above and below the roof, columns 0.5 mm on both sides of an end
    const near = {
      plane: 'length',
      left: 0.07,
      right: 0.082,
      bottom: -0.006,
      top: 0.006,
      columns: 12,
      rows: 12
    } as const;
    close(worst(problem, waveNumber(1500), near, 7), 0, {
      abs: 0.02,
      because: 'fieldAt itself resolves half a millimetre from the surface to 1 %'
    });
  });

  it('is finite on walls, free edges and nodes, and half of the jump there', () => {
    const problem = waveProblem(coarse('plate', 0.01), [{ outline: OVAL, middle: [0, 0, 0] }]);
    const state = solveWave(problem, waveNumber(1000));
    // middle row on the plate, pixels every 5 mm from edge to edge
    const grid = {
      plane: 'length',
      left: -0.0775,
      right: 0.0775,
      bottom: -0.03,
      top: 0.03,
      columns: 31,
      rows: 3
    } as const;
    const { re, im } = fieldOnGrid(problem, state, grid);
    expect([...re, ...im].every(Number.isFinite)).toBe(true);
    for (let column = 0; column < 31; column++)
      close(re[31 + column], 0, { abs: 1e-9, because: 'the mean of front and back of a flat plate' });
  });

  it('fills a closed box at low frequency like a spring: ρc²·S·x/V everywhere inside', () => {
    const problem = waveProblem(coarse('box', 0.006), [{ outline: OVAL, middle: [0, 0, 0] }]);
    const k = waveNumber(150);
    const inside = {
      plane: 'width',
      left: -0.0145,
      right: 0.0145,
      bottom: -0.017,
      top: 0,
      columns: 9,
      rows: 6
    } as const;
    const { re } = fieldOnGrid(problem, solveWave(problem, k), inside);
    const spring = problem.pistons[0].area / (k * k * 0.042 * 0.029 * 0.017);
    for (const p of re)
      close(p, spring, { rel: 0.03, because: 'well below the first standing wave (R. H. Small 1972)' });
  });

  it('lets out of a closed box what goes out, small beside what is inside', () => {
    const problem = waveProblem(coarse('box', 0.006), [{ outline: OVAL, middle: [0, 0, 0] }]);
    const k = waveNumber(500);
    const state = solveWave(problem, k);
    const grid = { ...GRID, bottom: -0.2, top: -0.03, rows: 17 } as const;
    const { re, im } = fieldOnGrid(problem, state, grid);
    for (const [column, row] of [
      [3, 12],
      [12, 16],
      [20, 8]
    ]) {
      const at = pointOf(grid, problem, column, row);
      const pixel = row * grid.columns + column;
      close(Math.hypot(re[pixel], im[pixel]), problem.pistons[0].area / (4 * Math.PI * Math.hypot(...at)), {
        rel: 0.2,
        because:
          'a source all round, from the middle of the front; near by the back of the box is in its shadow'
      });
    }
  });

  it('tends to the far field', () => {
    const problem = waveProblem(coarse('plate'), [{ outline: OVAL, middle: [0.01, 0, 0] }]);
    const k = waveNumber(2000);
    const state = solveWave(problem, k);
    for (const angleDeg of [0, 50, 130]) {
      const [dx, , dz] = toward(angleDeg);
      const [x, z] = [0.01 + 60 * dx, 60 * dz];
      const grid = {
        plane: 'length',
        left: x - 1,
        right: x + 1,
        bottom: z - 1,
        top: z + 1,
        columns: 1,
        rows: 1
      } as const;
      const image = fieldOnGrid(problem, state, grid);
      const far = farField(problem, state, toward(angleDeg));
      const got = scaled(image, (2 * Math.PI * 60) / problem.pistons[0].area, k * 60);
      const size = Math.hypot(far.re, far.im);
      close(got.re, far.re, { abs: 0.02 * size, because: 'two quadratures at λ/14' });
      close(got.im, far.im, { abs: 0.02 * size, because: 'two quadratures at λ/14' });
    }
  });

  it('dies away with a lossy wave number as e^{−jkr} does, against the sum over all triangles', () => {
    const mesh = coarse('plate');
    const problem = waveProblem({ ...mesh }, [{ outline: OVAL, middle: [0, 0, 0] }]);
    const k = waveNumber(700);
    const state = solveWave(problem, k);
    const grid = { ...GRID, top: 0.35, bottom: 0.25, columns: 3, rows: 2 } as const;
    const loss = 0.4;
    const image = fieldOnGrid(problem, state, grid, loss);
    for (let pixel = 0; pixel < 6; pixel++) {
      const p = byTriangles(
        problem,
        state,
        k,
        loss,
        pointOf(grid, problem, pixel % 3, Math.floor(pixel / 3))
      );
      const size = Math.hypot(p.re, p.im);
      close(image.re[pixel], p.re, { abs: 2e-4 * size, because: 'the table of the kernel, linear' });
      close(image.im[pixel], p.im, { abs: 2e-4 * size, because: 'the table of the kernel, linear' });
    }
  });

  it('takes the potential flow too', () => {
    const problem = waveProblem(coarse('plate', 0.01), [{ outline: OVAL, middle: [0, 0, 0] }]);
    close(worst(problem, 0, GRID, 23), 0, { abs: 0.01, because: 'the same integral' });
  });

  it('refuses a grid without pixels or extent', () => {
    const problem = waveProblem(coarse('plate'), [{ outline: OVAL, middle: [0, 0, 0] }]);
    const state = solveWave(problem, waveNumber(700));
    expect(() => fieldOnGrid(problem, state, { ...GRID, columns: 0 })).toThrow(RangeError);
    expect(() => fieldOnGrid(problem, state, { ...GRID, rows: 2.5 })).toThrow('24 × 2.5');
    expect(() => fieldOnGrid(problem, state, { ...GRID, top: GRID.bottom })).toThrow(RangeError);
  });
});

/** One pixel times `scale`·e^{j·phase}. */
function scaled({ re, im }: FieldImage, scale: number, phase: number) {
  const [cos, sin] = [scale * Math.cos(phase), scale * Math.sin(phase)];
  return { re: re[0] * cos - im[0] * sin, im: re[0] * sin + im[0] * cos };
}

/** The double layer with k·(1 − j·loss) by the edge midpoints of all images, plainly; one class of unknowns. */
function byTriangles(
  { surface }: WaveProblem,
  { jumps }: ReturnType<typeof solveWave>,
  k: number,
  loss: number,
  at: readonly number[]
) {
  const { mesh, classes, images, normal, area } = surface;
  const m = (node: number, part: 're' | 'im') => {
    const i = classes[0].nodes.indexOf(node);
    return i < 0 ? 0 : jumps[0][0]![part][i];
  };
  const sum = { re: 0, im: 0 };
  for (const { sign } of images)
    for (let t = 0; t < area.length; t++)
      for (let i = 0; i < 3; i++) {
        const [a, b] = [mesh.triangles[3 * t + i], mesh.triangles[3 * t + ((i + 1) % 3)]];
        const d = [0, 1, 2].map(
          (x) => at[x] - (sign[x] * (mesh.points[3 * a + x] + mesh.points[3 * b + x])) / 2
        );
        const r = Math.hypot(...d);
        const height = d.reduce((s, x, axis) => s + x * sign[axis] * normal[3 * t + axis], 0);
        const scale = (height * area[t] * Math.exp(-k * loss * r)) / (3 * 4 * Math.PI * r ** 3);
        // 1 + jkr·(1 − j·loss) and e^{−jkr}
        const [ar, ai] = [1 + k * r * loss, k * r];
        const [er, ei] = [Math.cos(k * r), -Math.sin(k * r)];
        const [gr, gi] = [scale * (ar * er - ai * ei), scale * (ar * ei + ai * er)];
        const [mr, mi] = [(m(a, 're') + m(b, 're')) / 2, (m(a, 'im') + m(b, 'im')) / 2];
        sum.re += gr * mr - gi * mi;
        sum.im += gr * mi + gi * mr;
      }
  return sum;
}
