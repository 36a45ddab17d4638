import { describe, expect, it } from 'vitest';
import type { Complex } from '../../../../src/lib/numeric/complex.js';
import type { Piston } from '../../../../src/lib/waves/mesh/piston.js';
import { images, type Axis, type Mirror } from '../../../../src/lib/waves/mesh/symmetry.js';
import type { TriangleMesh } from '../../../../src/lib/waves/mesh/triangle-mesh.js';
import { acousticLoad } from '../../../../src/lib/waves/field/acoustic-load.js';
import { farField } from '../../../../src/lib/waves/field/far-field.js';
import { fieldAt } from '../../../../src/lib/waves/field/field-at.js';
import { fieldOnGrid } from '../../../../src/lib/waves/field/field-on-grid.js';
import { solveWave, waveProblem } from '../../../../src/lib/waves/solve/wave-problem.js';
import { close } from '../../../helpers/close.js';
import { unfoldMesh } from '../../../helpers/unfold-mesh.js';
import { coarse, OVAL, powerRatio, toward, waveNumber } from '../wave-cases.js';

const K = waveNumber(1900);
const GRID = { left: -0.11, right: 0.11, columns: 6, rows: 5 } as const;

function same(got: Complex, expected: Complex, because: string) {
  const size = Math.hypot(expected.re, expected.im);
  close(Math.hypot(got.re - expected.re, got.im - expected.im), 0, { abs: 1e-9 * size, because });
}

/** A mesh with all that belongs to it moved along an axis. */
function moved(mesh: TriangleMesh, axis: Axis, by: number): TriangleMesh {
  return {
    ...mesh,
    points: mesh.points.map((x, i) => (i % 3 === axis ? x + by : x)),
    mirrors: mesh.mirrors.map((mirror) => (mirror.axis === axis ? { ...mirror, at: mirror.at + by } : mirror))
  };
}

describe('images', () => {
  it('of a mirror that does not go through the origin are shifted by twice its distance', () => {
    const [own, copy] = images([{ axis: 0, at: 0.3, kind: 'symmetry' }]);
    expect(own).toMatchObject({ sign: [1, 1, 1], shift: [0, 0, 0] });
    expect(copy).toMatchObject({ sign: [-1, 1, 1], shift: [0.6, 0, 0] });
  });

  it('that make up the surface come first, then their reflections in walls', () => {
    const board: Mirror = { axis: 2, at: -0.05, kind: 'wall' };
    const all = images([board, { axis: 0, at: 0, kind: 'symmetry' }]);
    expect(all.map(({ sign, shift }) => [...sign, shift[2]])).toEqual([
      [1, 1, 1, 0],
      [-1, 1, 1, 0],
      [1, 1, -1, -0.1],
      [-1, 1, -1, -0.1]
    ]);
  });

  it('shifted with what they mirror change nothing but the place', () => {
    const mesh = coarse('shell', 0.015);
    const piston: Piston = { outline: OVAL, middle: [0.02, 0.001, 0] };
    const here = waveProblem(mesh, [piston]);
    const there = waveProblem(moved(moved(mesh, 0, 0.13), 2, -0.04), [
      { ...piston, middle: [0.15, 0.001, -0.04] }
    ]);
    const [a, b] = [here, there].map((problem) => solveWave(problem, K));
    const because = 'the same problem elsewhere';
    same(acousticLoad(there, b), acousticLoad(here, a), because);
    same(farField(there, b, toward(40, 20)), farField(here, a, toward(40, 20)), because);
    same(fieldAt(there, b, [0.16, 0.02, 0.03]), fieldAt(here, a, [0.03, 0.02, 0.07]), because);
    const section = { ...GRID, plane: 'length', bottom: 0.01, top: 0.09 } as const;
    const own = fieldOnGrid(here, a, section);
    const far = {
      ...section,
      left: section.left + 0.13,
      right: section.right + 0.13,
      bottom: -0.03,
      top: 0.05
    };
    const most = Math.max(...own.re.map(Math.abs));
    fieldOnGrid(there, b, far).re.forEach((value, p) =>
      close(value, own.re[p], { abs: 1e-5 * most, because: 'table of the kernel with another reach' })
    );
  });
});

describe('a wall beside a mount is a second mount beyond it that moves alike', () => {
  const cases: [string, Mirror, 'plate' | 'shell' | 'box', Piston][] = [
    [
      'shell over a board',
      { axis: 2, at: -0.06, kind: 'wall' },
      'shell',
      { outline: OVAL, middle: [0.02, 0.001, 0] }
    ],
    [
      'plate over a board',
      { axis: 2, at: -0.03, kind: 'wall' },
      'plate',
      { outline: OVAL, middle: [0, 0, 0] }
    ],
    ['box over a board', { axis: 2, at: -0.03, kind: 'wall' }, 'box', { outline: OVAL, middle: [0, 0, 0] }],
    [
      'unfolded shell beside a wall',
      { axis: 0, at: 0.1, kind: 'wall' },
      'shell',
      { outline: OVAL, middle: [0.02, 0, 0] }
    ]
  ];
  for (const [name, wall, form, piston] of cases) {
    const own = coarse(form, form === 'box' ? 0.008 : 0.016);
    // a wall takes the place of a plane of symmetry on its axis
    const base =
      wall.axis === 2
        ? own
        : unfoldMesh(
            own,
            own.mirrors.filter(({ axis }) => axis === wall.axis)
          );
    const mesh = { ...base, mirrors: [...base.mirrors, wall] };
    const middle: [number, number, number] = [...piston.middle];
    middle[wall.axis] = 2 * wall.at - middle[wall.axis];
    const one = waveProblem(mesh, [piston]);
    const two = waveProblem(unfoldMesh(mesh, [wall]), [piston, { ...piston, middle }]);
    const [a, b] = [one, two].map((problem) => solveWave(problem, K));
    const because = 'the whole meshed twice';

    it(`the load: ${name}`, () => {
      const [z11, z12] = [0, 1].map((by) => acousticLoad(two, b, 0, by));
      same(acousticLoad(one, a), { re: z11.re + z12.re, im: z11.im + z12.im }, because);
    });

    it(`the field at points, far away and on sections: ${name}`, () => {
      const at = [0.03, -0.02, 0.05] as const;
      const near = [0, 1].map((by) => fieldAt(two, b, at, by));
      same(fieldAt(one, a, at), { re: near[0].re + near[1].re, im: near[0].im + near[1].im }, because);
      const d = toward(55, 20);
      const far = [0, 1].map((by) => farField(two, b, d, by));
      const [re, im] = [far[0].re + far[1].re, far[0].im + far[1].im];
      // from the middle of the one cone to that of both
      const ahead = K * [0, 1, 2].reduce((s, i) => s + d[i] * (one.middle[i] - two.middle[i]), 0);
      same(
        farField(one, a, d),
        { re: re * Math.cos(ahead) + im * Math.sin(ahead), im: im * Math.cos(ahead) - re * Math.sin(ahead) },
        because
      );
      const section = { ...GRID, plane: 'length', bottom: 0.01, top: 0.09 } as const;
      const image = fieldOnGrid(one, a, section);
      const images = [0, 1].map((by) => fieldOnGrid(two, b, section, 0, by));
      const most = Math.max(...image.re.map(Math.abs));
      image.re.forEach((value, p) =>
        close(value, images[0].re[p] + images[1].re[p], {
          abs: 1e-5 * most,
          because: 'single precision, and a table of the kernel with another reach'
        })
      );
    });

    it(`its energy: what goes out goes to one side: ${name}`, () => {
      // by symmetry half of the power of both mounts is that of the one
      close(powerRatio(one, a) / 2, 1, {
        rel: 1e-4,
        because: 'an identity but for the table and the sphere'
      });
    });
  }
});
