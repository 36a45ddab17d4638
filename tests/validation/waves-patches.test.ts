import { describe, expect, it } from 'vitest';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import type { Complex } from '../../src/lib/numeric/complex.js';
import type { PatchArea } from '../../src/lib/waves/mesh/patch.js';
import { acousticLoad } from '../../src/lib/waves/field/acoustic-load.js';
import { farField } from '../../src/lib/waves/field/far-field.js';
import { chassisStrip, mountPatches, slitEnds } from '../../src/lib/waves/mesh/mount-openings.js';
import { boxParts, mountParts } from '../../src/lib/waves/mesh/mount-parts.js';
import { partsMesh } from '../../src/lib/waves/mesh/parts-mesh.js';
import type { Patch } from '../../src/lib/waves/mesh/patch.js';
import type { Panel } from '../../src/lib/waves/mesh/surface-part.js';
import type { Piston } from '../../src/lib/waves/mesh/piston.js';
import { solveWave, waveProblem } from '../../src/lib/waves/solve/wave-problem.js';
import { C, coarse, db, lostShare, OVAL, powerRatio, toward, waveNumber } from '../unit/waves/wave-cases.js';
import { close } from '../helpers/close.js';

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

const panel = (left: number, right: number): Panel => ({
  shape: 'panel',
  low: [left, -0.05, 0],
  high: [right, 0.05, 0],
  facing: 1
});

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
    // a line of the mesh along the edge of the opening
    const parts = [panel(-0.075, -0.055), panel(-0.055, 0.055), panel(0.055, 0.075)];
    const whole = waveProblem(partsMesh(parts, spacing), [CONE], 0, [
      patch(ends(0.02), () => ({ re: 1e7, im: 0 }))
    ]);
    const cut = waveProblem(partsMesh([panel(-0.055, 0.055)], spacing), [CONE]);
    for (const f of [200, 1000, 2500]) {
      const [open, gone] = [whole, cut].map((problem) => solveWave(problem, waveNumber(f)));
      for (const angle of [0, 40, 75])
        close(db(farField(whole, open, toward(angle))), db(farField(cut, gone, toward(angle))), {
          abs: 0.1,
          because: 'the mesh of the cut plate crowds towards its edge, the other does not'
        });
    }
  });

  it('spread over a strip is the slit itself, in a plate', () => {
    const [gap, strip] = [0.001, 0.006];
    const slits = [-0.05, 0.05].map((x) => panel(x - strip / 2, x + strip / 2));
    const meshed = waveProblem(
      partsMesh(
        [
          panel(-0.075, -0.05 - gap / 2),
          panel(-0.05 + gap / 2, 0.05 - gap / 2),
          panel(0.05 + gap / 2, 0.075)
        ],
        [0.006, 0.006, 0]
      ),
      [CONE]
    );
    const length = slitEnds(strip, gap);
    const spread = waveProblem(coarse('plate', 0.006), [CONE], 0, [
      patch(slits, () => ({ re: 1 / length, im: 0 }))
    ]);
    for (const f of [300, 1500]) {
      const [a, b] = [meshed, spread].map((problem) => solveWave(problem, waveNumber(f)));
      for (const angle of [0, 40, 75])
        close(db(farField(spread, b, toward(angle))), db(farField(meshed, a, toward(angle))), {
          abs: 0.1,
          because: 'it changes the level by 1 to 1.5 dB; the spread flow is even over the strip'
        });
    }
  });

  it('along a chassis is the gap itself, at the walls of a shell', () => {
    const sides = [0.08, 0.03, 0.03] as const;
    const [gap, height, strip] = [0.002, 0.01, 0.00375];
    const shell = boxParts(sides, { sides: true, ends: true, floor: false });
    const floor: Panel = {
      shape: 'panel',
      low: [gap - 0.04, gap - 0.015, height - 0.03],
      high: [0.04 - gap, 0.015 - gap, height - 0.03],
      facing: -1
    };
    const meshed = waveProblem(partsMesh([...shell, floor], [0.005, 0.005, 0.005]), [CONE]);
    const mount = {
      kind: 'shell' as const,
      length: sides[0],
      width: sides[1],
      height: sides[2],
      ends: 'closed' as const,
      offset: 0,
      // as thin as a sheet, so that only the ends of the slits are left
      chassis: { height, slit: gap, ends: gap, depth: 1e-9, fill: 0 }
    };
    expect(chassisStrip(mount)).toBe(strip);
    const installation = {
      speaker: { ...SPEAKERS.oval, cone: OVAL, bodyVolume: 0 },
      mount,
      turn: 0 as const
    };
    const spread = waveProblem(partsMesh(mountParts(installation), [0.005, 0.005, 0.005]), [CONE], 0, [
      ...mountPatches(installation, C)
    ]);
    for (const [f, abs] of [
      [300, 0.05],
      [800, 0.1],
      [1100, 0.2],
      [2500, 0.2]
    ]) {
      const [a, b] = [meshed, spread].map((problem) => solveWave(problem, waveNumber(f)));
      for (const angle of [0, 60, 120])
        close(db(farField(spread, b, toward(angle, 90))), db(farField(meshed, a, toward(angle, 90))), {
          abs,
          because:
            'three sheets meet at the walls; near its ring, 1.5 kHz, the meshed gap of few cells is coarse'
        });
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
});
