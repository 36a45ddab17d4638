import { describe, expect, it } from 'vitest';
import type { Installation } from '../../../../src/lib/acoustics/installation.js';
import type { Mount } from '../../../../src/lib/acoustics/mounts/mount.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { acousticLoad } from '../../../../src/lib/waves/field/acoustic-load.js';
import { fieldAt } from '../../../../src/lib/waves/field/field-at.js';
import { fieldOnGrid } from '../../../../src/lib/waves/field/field-on-grid.js';
import { columnAt, rowAt } from '../../../../src/lib/waves/field/section-grid.js';
import { mountProblem } from '../../../../src/lib/waves/solve/mount-problem.js';
import { solveWave } from '../../../../src/lib/waves/solve/wave-problem.js';
import { close } from '../../../helpers/close.js';
import { waveNumber } from '../wave-cases.js';

const AIR = { temperatureC: 20 };
const BOX: Mount = { kind: 'box', length: 0.042, width: 0.029, depth: 0.017 };
const LEAK = { gap: 1e-4, length: 0.126, depth: 0.001 };
const SHELL = {
  kind: 'shell',
  length: 0.1,
  width: 0.034,
  height: 0.035,
  ends: 'closed',
  offset: 0,
  chassis: { height: 0.01, slit: 0.001, ends: 0.002, depth: 0.001, fill: 0.5 }
} as const;

function solved(mount: Mount, f: number) {
  const installation: Installation = { speaker: SPEAKERS.oval, mount, turn: 0 };
  const { problem } = mountProblem(installation, AIR, { accuracy: 'draft', loss: 0 });
  return { problem, state: solveWave(problem, waveNumber(f)) };
}

describe('the air round openings', () => {
  it.each<[string, Mount]>([
    ['a leaky box, part of it the speaker', { ...BOX, leak: LEAK }],
    [
      'a shell half full over a chassis that nearly touches',
      { ...SHELL, chassis: { ...SHELL.chassis, slit: 1e-4, ends: 0 } }
    ]
  ])('low notes press on the cone as they do in the room behind it: %s', (_, mount) => {
    const { problem, state } = solved(mount, 60);
    const inside = fieldAt(problem, state, [0.004, 0.003, -0.0135]);
    const load = acousticLoad(problem, state);
    const { area } = problem.pistons[0];
    // on the cone front minus back; the front is small beside it, and the picture is against the same volume velocity
    close(
      Math.hypot(inside.re + load.re * area, inside.im + load.im * area) /
        (Math.hypot(load.re, load.im) * area),
      0,
      {
        abs: 0.2,
        because: 'what is before the cone, and the air that moves between cone and slits'
      }
    );
    expect(Math.hypot(inside.re, inside.im)).toBeGreaterThan(0.01);
  });

  it.each<[string, Mount]>([
    ['a chassis with mechanism', SHELL],
    ['a box in its body', { ...BOX, body: { length: 0.1, width: 0.039, height: 0.031, openings: 3e-4 } }],
    ['a grille', { ...BOX, grille: { holes: 20, diameter: 0.0015, thickness: 0.001, cavity: 0.004 } }]
  ])('a picture shows what the field is at its pixels: %s', (_, mount) => {
    const { problem, state } = solved(mount, 900);
    const grid = {
      plane: 'width',
      left: -0.05,
      right: 0.05,
      bottom: -0.06,
      top: 0.04,
      columns: 11,
      rows: 11
    } as const;
    const { re, im } = fieldOnGrid(problem, state, grid);
    const most = re.reduce((a, x, i) => Math.max(a, Math.hypot(x, im[i])), 0);
    for (let row = 0; row < grid.rows; row++)
      for (let column = 0; column < grid.columns; column++) {
        const i = row * grid.columns + column;
        const at = fieldAt(problem, state, [0, columnAt(grid, column), rowAt(grid, row)]);
        close(Math.hypot(re[i] - at.re, im[i] - at.im) / most, 0, {
          abs: 0.005,
          because: 'two ways to integrate the same'
        });
      }
  });
});
