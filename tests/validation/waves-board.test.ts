import { describe, expect, it } from 'vitest';
import type { Board } from '../../src/lib/acoustics/mounts/board.js';
import type { Installation } from '../../src/lib/acoustics/installation.js';
import type { Listener } from '../../src/lib/acoustics/listener.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { farField } from '../../src/lib/waves/field/far-field.js';
import { fieldAt } from '../../src/lib/waves/field/field-at.js';
import { fieldOnGrid } from '../../src/lib/waves/field/field-on-grid.js';
import { listenerDirection } from '../../src/lib/waves/field/listener-point.js';
import { transfer } from '../../src/lib/waves/field/transfer.js';
import { ACCURACY } from '../../src/lib/waves/mesh/accuracy.js';
import { hearWaves, heardResponse } from '../../src/lib/waves/curve/heard-waves.js';
import { mountProblem } from '../../src/lib/waves/solve/mount-problem.js';
import { solveWave } from '../../src/lib/waves/solve/wave-problem.js';
import { solutionKey, solveMount } from '../../src/lib/waves/wave-solution.js';
import { close } from '../helpers/close.js';
import { DEMO } from '../helpers/demo-installations.js';
import { C, db, powerRatio, waveNumber } from '../unit/waves/wave-cases.js';

const AIR = { temperatureC: 20 };
const TINY: Installation = {
  speaker: {
    ...SPEAKERS.oval,
    frame: { shape: 'rectangle', length: 0.012, width: 0.01 },
    cone: { shape: 'ellipse', length: 0.008, width: 0.006 }
  },
  mount: { kind: 'free' },
  turn: 0
};

function over(installation: Installation, above: number, facing: Board['facing'] = 'up'): Installation {
  return { ...installation, board: { above, facing } };
}

function solved(installation: Installation, f: number) {
  const { problem } = mountProblem(installation, AIR, { accuracy: 'draft', loss: 0 });
  return { problem, state: solveWave(problem, waveNumber(f)) };
}

function level(installation: Installation, f: number, listener: Listener): number {
  const { problem, state } = solved(installation, f);
  return db(transfer(problem, state, listener));
}

describe('a board', () => {
  it.each([
    ['up', 0.001],
    ['up', 0.02],
    ['down', 0.008]
  ] as const)(
    'doubles what comes of a closed box at low frequency, all round: facing %s at %d m',
    (facing, above) => {
      for (const angleDeg of [0, 45, 80])
        close(
          level(over(DEMO['closed box'], above, facing), 50, { angleDeg, plane: 'length' }) -
            level(DEMO['closed box'], 50, { angleDeg, plane: 'length' }),
          20 * Math.log10(2),
          { abs: 0.05, because: 'a source and its image in step' }
        );
    }
  );

  it('over which a small mount stands high is its image turned over: 2·sin(kh·cos θ)', () => {
    for (const height of [0.06, 0.15, 0.4])
      for (const f of [300, 1000, 2600])
        for (const angleDeg of [0, 30, 60, 80]) {
          const expected =
            20 *
            Math.log10(Math.abs(2 * Math.sin(waveNumber(f) * height * Math.cos((angleDeg * Math.PI) / 180))));
          // in a dip, what little comes back to the mount counts
          if (expected < -6) continue;
          for (const facing of ['up', 'down'] as const)
            close(
              level(over(TINY, height, facing), f, { angleDeg, plane: 'width' }) -
                level(TINY, f, { angleDeg, plane: 'width' }),
              expected,
              { abs: 0.1, because: `image of a vertical dipole, ${height} m, ${f} Hz, ${angleDeg}°` }
            );
        }
  });

  it.each<[string, Installation, number]>([
    ['plate', over(DEMO['flat plate'], 0.03), 700],
    ['shell', over(DEMO['cab body'], 0.014), 1300],
    ['shell, roof down', over(DEMO['cab body'], 0.01, 'down'), 1300],
    ['box', over(DEMO['closed box'], 0.02), 2500]
  ])('takes no power: %s', (_, installation, f) => {
    const { problem, state } = solved(installation, f);
    // the far field of all images is the same above and, mirrored, below
    close(powerRatio(problem, state) / 2, 1, {
      abs: 1e-4,
      because: 'power at the cone and into the half-space'
    });
  });

  it('the two ways to a listener add up to the field of all images', () => {
    for (const facing of ['up', 'down'] as const) {
      const { problem, state } = solved(over(DEMO['cab body'], 0.02, facing), 1700);
      const up = facing === 'up' ? 1 : -1;
      for (const plane of ['length', 'width'] as const) {
        const listener = { angleDeg: 50, plane };
        const direction = listenerDirection(listener, up);
        const [far, all] = [transfer(problem, state, listener), farField(problem, state, direction)];
        close(Math.hypot(far.re - all.re, far.im - all.im), 0, { abs: 1e-9, because: 'the same sum' });
        const distance = 0.4;
        const point = problem.middle.map((x, d) => x + distance * direction[d]) as [number, number, number];
        const near = fieldAt(problem, state, point);
        close(
          db(transfer(problem, state, { ...listener, distance })),
          db(near) + 20 * Math.log10((2 * Math.PI * distance) / problem.pistons[0].area),
          { abs: 1e-9, because: 'the same sum at a point' }
        );
        close(db(transfer(problem, state, { ...listener, distance: 1000 })), db(far), {
          abs: 0.1,
          because: 'far away is the far field, by another quadrature'
        });
      }
    }
  });

  it('hides what is below it', () => {
    const { problem, state } = solved(over(DEMO['flat plate'], 0.03), 900);
    expect(transfer(problem, state, { angleDeg: 120, plane: 'width' })).toEqual({ re: 0, im: 0 });
    expect(transfer(problem, state, { angleDeg: 170, plane: 'width', distance: 0.05 })).toEqual({
      re: 0,
      im: 0
    });
    const grid = {
      plane: 'width',
      left: -0.1,
      right: 0.1,
      bottom: -0.05,
      top: 0.05,
      columns: 3,
      rows: 5
    } as const;
    const { re } = fieldOnGrid(problem, state, grid);
    expect([...re.subarray(12)]).toEqual([0, 0, 0]);
    expect(Math.min(...re.subarray(0, 12).map(Math.abs))).toBeGreaterThan(0);
  });

  it('of a mount that is turned over about its length leaves the ends where they were', () => {
    const aside: Installation = {
      ...DEMO['flat plate'],
      mount: { kind: 'plate', shape: 'rectangle', length: 0.152, width: 0.102, offset: [0.04, 0.02] }
    };
    const heard = (installation: Installation, listener: Listener) => level(installation, 1800, listener);
    // a flat plate radiates alike from both faces, so that turned over it is the plate with its speaker on the other side
    const other: Installation = {
      ...aside,
      mount: { kind: 'plate', shape: 'rectangle', length: 0.152, width: 0.102, offset: [0.04, -0.02] }
    };
    for (const plane of ['length', 'width'] as const)
      close(
        heard(over(aside, 0.03, 'down'), { angleDeg: 40, plane }),
        heard(over(other, 0.03), { angleDeg: 40, plane }),
        { abs: 1e-6, because: 'symmetry' }
      );
  });

  it('is interpolated over frequency as well as no board, high or low, near or far', () => {
    const between = Float64Array.of(90, 333, 777, 1234, 1777, 2345, 2875);
    for (const installation of [
      over(DEMO['cab body'], 0.014),
      over(DEMO['free air'], 0.5),
      over(DEMO['closed box'], 0.1, 'down')
    ])
      for (const distance of [undefined, 0.9]) {
        const listener: Listener = { angleDeg: 60, plane: 'width', distance, board: true };
        const mount = solveMount(installation, AIR, { accuracy: 'draft', loss: 0 });
        const heard = hearWaves(mount, listener);
        const { re, im } = heardResponse(heard, installation, AIR, between, 'ideal');
        // a bare speaker is solved to 8 kHz, where the way by the board makes as many more ripples
        expect(heard.solved).toBeLessThan((40 * heard.highest) / ACCURACY.draft.highest);
        between.forEach((f, i) => {
          const { problem } = mount.curve;
          const direct = transfer(problem, solveWave(problem, (2 * Math.PI * f) / C), listener);
          const miss = Math.hypot(re[i] - direct.re, im[i] - direct.im) / Math.hypot(direct.re, direct.im);
          close(miss, 0, { abs: 0.006, because: '0.05 dB between the solved frequencies' });
        });
      }
  });

  it('is part of what a solution depends on', () => {
    const keys = [
      DEMO['closed box'],
      over(DEMO['closed box'], 0.02),
      over(DEMO['closed box'], 0.03),
      over(DEMO['closed box'], 0.02, 'down')
    ].map((installation) => solutionKey(installation, AIR));
    expect(new Set(keys).size).toBe(4);
  });
});
