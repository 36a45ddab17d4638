import { describe, it } from 'vitest';
import { slitImpedance } from '../../src/lib/acoustics/openings/narrow-opening.js';
import type { Complex } from '../../src/lib/numeric/complex.js';
import type { PatchArea } from '../../src/lib/waves/assembly/patch-mass.js';
import { acousticLoad } from '../../src/lib/waves/field/acoustic-load.js';
import { farField } from '../../src/lib/waves/field/far-field.js';
import type { Piston } from '../../src/lib/waves/mesh/piston.js';
import {
  solveWave,
  waveProblem,
  type Patch,
  type WaveProblem,
  type WaveState
} from '../../src/lib/waves/solve/wave-problem.js';
import { boxMesh, C, coarse, db, OVAL, powerRatio, toward, waveNumber } from '../unit/waves/wave-cases.js';
import { close } from '../helpers/close.js';

const RHO = 1.204;
const CONE: Piston = { outline: OVAL, middle: [0, 0, 0] };

const patch = (areas: readonly PatchArea[], admittance: (k: number) => Complex): Patch => ({
  areas,
  admittance
});
/** Strips at both ends of a plate of 150 × 100 mm, so wide. */
const ends = (wide: number): PatchArea[] => [
  { low: [-0.075, -0.05, 0], high: [wide - 0.075, 0.05, 0] },
  { low: [0.075 - wide, -0.05, 0], high: [0.075, 0.05, 0] }
];
/** A strip round the cone in the front of the box of 42 × 29 mm: what lies outside of 38 × 25 mm. */
const ROUND: PatchArea[] = [
  { low: [-0.021, 0.0125, 0], high: [0.021, 0.0145, 0] },
  { low: [-0.021, -0.0145, 0], high: [0.021, -0.0125, 0] },
  { low: [0.019, -0.0125, 0], high: [0.021, 0.0125, 0] },
  { low: [-0.021, -0.0125, 0], high: [-0.019, 0.0125, 0] }
];
const ROUND_AREA = 0.042 * 0.029 - 0.038 * 0.025;

/** ½∫ Re(1/Z)·|μ|² over ½·Re(Za)·|U|²: with m the jump over jωρv, −Im of jωρ/Z·∫|m|² over −Im ∫ m. */
function lostShare({ surface, patches, pistons }: WaveProblem, state: WaveState): number {
  let lost = 0;
  for (const { mass, admittance } of patches) {
    const { im } = admittance(state.k);
    state.jumps[0].forEach((m, c) => {
      if (!m) return;
      for (let e = 0; e < mass[c].length; e += 3) {
        const [i, j, value] = mass[c].subarray(e, e + 3);
        lost += (i === j ? 1 : 2) * im * value * (m.re[i] * m.re[j] + m.im[i] * m.im[j]) * surface.copies;
      }
    });
  }
  return lost / pistons[0].area ** 2 / -acousticLoad({ surface, pistons } as WaveProblem, state).im;
}

describe('an opening', () => {
  it('of infinite impedance is the wall', () => {
    const mesh = coarse('plate');
    const [wall, closed] = [
      waveProblem(mesh, [CONE]),
      waveProblem(mesh, [CONE], 0, [patch(ends(0.02), () => ({ re: 0, im: 0 }))])
    ];
    const [a, b] = [wall, closed].map((problem) =>
      acousticLoad(problem, solveWave(problem, waveNumber(900)))
    );
    close(a.re, b.re, { rel: 1e-12, because: 'nothing is added' });
  });

  it('of no impedance is as if that part of the plate were not there', () => {
    const spacing = [0.006, 0.006, 0] as const;
    const walls = { sides: false, ends: false, floor: false };
    const whole = waveProblem(boxMesh([0.15, 0.1, 0], walls, spacing), [CONE], 0, [
      patch(ends(0.02), () => ({ re: 1e7, im: 0 }))
    ]);
    const cut = waveProblem(boxMesh([0.11, 0.1, 0], walls, spacing), [CONE]);
    for (const f of [200, 1000, 2500]) {
      const [a, b] = [whole, cut].map((problem) =>
        db(farField(problem, solveWave(problem, waveNumber(f)), toward(40)))
      );
      close(a, b, { abs: 0.25, because: 'the edge lies within a cell of the mesh' });
    }
  });

  it('keeps the power: that of the cone is radiated or lost in it', () => {
    for (const [form, areas] of [
      ['plate', ends(0.02)],
      ['box', ROUND]
    ] as const) {
      const admittance = (k: number) => ({ re: 8, im: 3 * k });
      const problem = waveProblem(coarse(form, 0.008), [CONE], 0, [
        patch(areas, (k) => ({ re: admittance(k).re, im: admittance(k).im }))
      ]);
      for (const f of [400, 2000]) {
        const state = solveWave(problem, waveNumber(f));
        close(powerRatio(problem, state) + lostShare(problem, state), 1, { abs: 1e-4, because: form });
      }
    }
  });

  it('round the frame makes of a box the lumped circuit of its spring and the leak', () => {
    const [gap, depth, length] = [1e-4, 0.001, 0.126];
    const impedance = (f: number) => slitImpedance({ gap, length, depth }, f, RHO);
    const admittance = (k: number): Complex => {
      const f = (k * C) / (2 * Math.PI);
      const z = impedance(f);
      const w = 2 * Math.PI * f * RHO;
      const square = (z.re ** 2 + z.im ** 2) * ROUND_AREA;
      return { re: (w * z.im) / square, im: (w * z.re) / square };
    };
    const problem = waveProblem(coarse('box', 0.005), [CONE], 0, [patch(ROUND, admittance)]);
    const tight = waveProblem(coarse('box', 0.005), [CONE]);
    for (const f of [100, 200, 350, 500]) {
      const w = 2 * Math.PI * f;
      // volume velocity out of cone and leak: U·(1 − Zs/(Zs + Zl)) with the spring Zs = ρc²/(jωV)
      const zs = -(RHO * C * C) / (w * 0.042 * 0.029 * 0.017);
      const z = impedance(f);
      const expected = 20 * Math.log10(Math.hypot(z.re, z.im) / Math.hypot(z.re, z.im + zs));
      const [a, b] = [problem, tight].map((one) =>
        db(farField(one, solveWave(one, waveNumber(f)), toward(60)))
      );
      close(a - b, expected, { abs: 0.5, because: 'lumped circuit, well below the first standing wave' });
    }
  });
});
