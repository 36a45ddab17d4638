import { describe, expect, it, test } from 'vitest';
import { airDensity } from '../../src/lib/acoustics/air.js';
import type { Installation } from '../../src/lib/acoustics/installation.js';
import type { Second } from '../../src/lib/acoustics/mounts/second.js';
import {
  coilCurrents,
  electricalImpedance,
  type Wiring
} from '../../src/lib/acoustics/speaker/driven-cones.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { gaussLegendre } from '../../src/lib/numeric/gauss-legendre.js';
import { hearWaves, heardResponse } from '../../src/lib/waves/curve/heard-waves.js';
import { acousticLoad } from '../../src/lib/waves/field/acoustic-load.js';
import { farField } from '../../src/lib/waves/field/far-field.js';
import { mountProblem } from '../../src/lib/waves/solve/mount-problem.js';
import { solveWave } from '../../src/lib/waves/solve/wave-problem.js';
import { solveMount } from '../../src/lib/waves/wave-solution.js';
import { close } from '../helpers/close.js';
import { C, db, toward, waveNumber } from '../unit/waves/wave-cases.js';

const AIR = { temperatureC: 20 };
const IN_FRONT = { angleDeg: 0, plane: 'length' } as const;
const WIRINGS: Wiring[] = (['parallel', 'series'] as const).flatMap((wiring) =>
  [false, true].map((reversed) => ({ wiring, reversed }))
);

/** Two ovals, each a quarter of a plate's length from its middle. */
const PLATE: Installation = {
  speaker: SPEAKERS.oval,
  mount: { kind: 'plate', shape: 'rectangle', length: 0.16, width: 0.1, offset: [-0.04, 0] },
  turn: 0
};
const SHELL: Installation = {
  speaker: SPEAKERS['round-23'],
  mount: { kind: 'shell', length: 0.16, width: 0.03, height: 0.04, ends: 'closed', offset: -0.04 },
  turn: 0,
  board: { above: 0.014, facing: 'up' }
};
const BOX: Installation = {
  speaker: SPEAKERS['phone-11x15'],
  mount: { kind: 'box', length: 0.06, width: 0.02, depth: 0.012 },
  turn: 0
};
/** Two frames long and one wide, as they lie side by side. */
const PAIRED_BOX: Installation = {
  ...BOX,
  mount: { kind: 'box', length: 0.04, width: 0.016, depth: 0.006, offset: [-0.0075, 0] }
};
const PAIRS: [string, Installation, Second['at']][] = [
  ['a plate', PLATE, [0.04, 0]],
  ['a plate, not in line', PLATE, [0.035, 0.02]],
  ['a shell over a board', SHELL, [0.03, 0]],
  ['a box', BOX, [0.02, 0]],
  ['a box, on both sides of its middle', PAIRED_BOX, [0.0075, 0]],
  ['a box, not in line', PAIRED_BOX, [0.012, 0.0025]]
];

const withSecond = (installation: Installation, at: Second['at'], wiring: Wiring): Installation => ({
  ...installation,
  second: { at, ...wiring }
});
const levels = (installation: Installation, frequency: Float64Array, speaker: 'ideal' | 'full') => {
  const solved = solveMount(installation, AIR, { accuracy: 'draft' });
  const { re, im } = heardResponse(hearWaves(solved, IN_FRONT), installation, AIR, frequency, speaker);
  return [...frequency.keys()].map((i) => db({ re: re[i], im: im[i] }));
};

describe('two equal cones at the low end, against one at the same voltage', () => {
  // R. H. Small's drive (1972): there the spring alone holds the cone, whatever the air does.
  const frequency = Float64Array.of(30, 60);
  const one = levels(PLATE, frequency, 'full');

  it.each([
    ['parallel', 20 * Math.log10(2)],
    ['series', 0]
  ] as const)('in %s: %d dB', (wiring, expected) => {
    const two = levels(withSecond(PLATE, [0.04, 0], { wiring, reversed: false }), frequency, 'full');
    two.forEach((level, i) =>
      close(level - one[i], expected, {
        abs: 0.05,
        because: 'the air takes a hundredth of the spring at 60 Hz'
      })
    );
  });

  it('one of them reversed: nothing is left in front of the middle', () => {
    for (const wiring of ['parallel', 'series'] as const)
      for (const level of levels(withSecond(PLATE, [0.04, 0], { wiring, reversed: true }), frequency, 'full'))
        expect(level).toBeLessThan(one[0] - 60);
  });
});

test('the mutual load takes some of it: in phase the air of both is heavier, reversed it is lighter', () => {
  const { problem } = mountProblem(withSecond(PLATE, [0.04, 0], WIRINGS[0]), AIR, { accuracy: 'draft' });
  const state = solveWave(problem, waveNumber(60));
  const own = acousticLoad(problem, state, 0, 0).re;
  const mutual = acousticLoad(problem, state, 1, 0).re;
  // On one side of an endless plate two small pistons at a distance s add 1/(2πs) to z (a point source in half space);
  // both sides of a finite plate stay below twice of it.
  expect(mutual).toBeGreaterThan(0);
  expect(mutual).toBeLessThan(2 / (2 * Math.PI * 0.08));
  expect(mutual).toBeLessThan(own);
});

test.each(PAIRS)('in %s each presses on the other alike (reciprocity)', (_, installation, at) => {
  const { problem } = mountProblem(withSecond(installation, at, WIRINGS[0]), AIR, { accuracy: 'draft' });
  for (const f of [150, 1200, 2900]) {
    const state = solveWave(problem, waveNumber(f));
    const [there, back] = [acousticLoad(problem, state, 1, 0), acousticLoad(problem, state, 0, 1)];
    const size = Math.hypot(there.re, there.im);
    close(Math.hypot(there.re - back.re, there.im - back.im) / size, 0, {
      abs: 1e-9,
      because: 'reciprocity'
    });
  }
});

test('reversed they are the dipole of their spacing: 2·sin(½·k·s·cos φ) of one', () => {
  // Two point sources out of step (any acoustics handbook), heard in the plane of a closed box as thin as a plate: nothing stands in
  // the way of what moves along it.
  const speaker = {
    ...SPEAKERS['phone-11x15'],
    frame: { shape: 'rectangle', length: 0.01, width: 0.01 },
    cone: { shape: 'rectangle', length: 0.008, width: 0.008 },
    depth: 0.002,
    bodyVolume: 0
  } as const;
  const installation: Installation = {
    speaker,
    mount: { kind: 'box', length: 0.1, width: 0.03, depth: 0.003 },
    turn: 0
  };
  const s = 0.04;
  const { problem } = mountProblem(withSecond(installation, [s, 0], WIRINGS[0]), AIR, {
    accuracy: 'full',
    loss: 0
  });
  for (const f of [100, 300, 600]) {
    const k = waveNumber(f);
    const state = solveWave(problem, k);
    for (const roundDeg of [0, 30, 60]) {
      const direction = toward(90, roundDeg);
      const [a, b] = [0, 1].map((piston) => farField(problem, state, direction, piston));
      const dipole = 2 * Math.sin((k * s * Math.cos((roundDeg * Math.PI) / 180)) / 2);
      close(db({ re: a.re - b.re, im: a.im - b.im }) - db(a), 20 * Math.log10(dipole), {
        abs: 0.4,
        because: 'the box is 3 mm thick'
      });
    }
  }
});

test.each(PAIRS.filter(([, { board }]) => !board))(
  'in %s: power in = heat + friction + what is radiated',
  (_, installation, at) => {
    const frequency = Float64Array.of(200, 800, 2500);
    const rho = airDensity(AIR);
    for (const wiring of WIRINGS) {
      const both = withSecond(installation, at, wiring);
      const solved = solveMount(both, AIR, { accuracy: 'draft', loss: 0 });
      const { driven } = heardResponse(hearWaves(solved, IN_FRONT), both, AIR, frequency);
      const { motor } = both.speaker;
      const z = electricalImpedance(driven!);
      const currents = coilCurrents(driven!);
      frequency.forEach((f, i) => {
        const w = 2 * Math.PI * f;
        const power = z.re[i] / (z.re[i] ** 2 + z.im[i] ** 2);
        const heat = currents.reduce((sum, { re, im }) => sum + motor.re * (re[i] ** 2 + im[i] ** 2), 0);
        const x = driven!.displacement.map(({ re, im }) => ({ re: re[i], im: im[i] }));
        const rms = Math.sqrt(motor.mms / motor.cms) / motor.qms;
        const friction = x.reduce((sum, { re, im }) => sum + rms * w * w * (re * re + im * im), 0);
        const { problem } = solved.curve;
        const state = solveWave(problem, w / C);
        // p·r in the far field is jωρ·Σ Sd·v·H/(2π), with v = jωx; its square over ρc, all round
        const { nodes, weights } = gaussLegendre(20);
        let sphere = 0;
        nodes.forEach((height, n) => {
          for (let j = 0; j < 24; j++) {
            const direction = toward((Math.acos(height) * 180) / Math.PI, 15 * j);
            let [re, im] = [0, 0];
            x.forEach((moved, piston) => {
              const h = farField(problem, state, direction, piston);
              re += h.re * moved.re - h.im * moved.im;
              im += h.re * moved.im + h.im * moved.re;
            });
            sphere += ((re * re + im * im) * weights[n] * 2 * Math.PI) / 24;
          }
        });
        const radiated =
          ((rho * w * w * problem.pistons[0].area) / (2 * Math.PI)) ** 2 * (sphere / (rho * C));
        close(heat + friction + radiated, power, { rel: 1e-6, because: 'heat is nearly all of it' });
        close(radiated / (power - heat - friction), 1, {
          abs: 0.02,
          because: 'what the sound takes: of a reversed pair in a box 3·10⁻⁹ of the power'
        });
      });
    }
  },
  30_000
);

test('two cones in one box: in phase they resonate as two in half of it each (Small 1972)', () => {
  const frequency = Float64Array.from({ length: 400 }, (_, i) => 300 + 2 * i);
  const peak = (installation: Installation): number => {
    const solved = solveMount(installation, AIR, { accuracy: 'full' });
    const { driven } = heardResponse(hearWaves(solved, IN_FRONT), installation, AIR, frequency);
    const { re, im } = electricalImpedance(driven!);
    const size = [...frequency.keys()].map((i) => Math.hypot(re[i], im[i]));
    return frequency[size.indexOf(Math.max(...size))];
  };
  const half: Installation = { ...BOX, mount: { kind: 'box', length: 0.03, width: 0.02, depth: 0.012 } };
  const together = peak(withSecond(BOX, [0.02, 0], { wiring: 'parallel', reversed: false }));
  close(together, peak(half), {
    rel: 0.03,
    because: 'the air outside is shared as well, a small part of the mass'
  });
});
