import { describe, expect, it } from 'vitest';
import type { Mount } from '../../../src/lib/acoustics/mounts/mount.js';
import { ruleOfThumb } from '../../../src/lib/acoustics/rule/rule-of-thumb.js';
import type { Listener } from '../../../src/lib/acoustics/listener.js';
import { outlineArea } from '../../../src/lib/acoustics/outline.js';
import { gaussLegendre } from '../../../src/lib/numeric/gauss-legendre.js';
import { ACCURACY } from '../../../src/lib/waves/mesh/accuracy.js';
import { acousticLoad } from '../../../src/lib/waves/field/acoustic-load.js';
import { freeAirMass } from '../../../src/lib/waves/field/free-air-mass.js';
import { solveWave } from '../../../src/lib/waves/solve/wave-problem.js';
import { solveMount, waveResponse, waveSolution } from '../../../src/lib/waves/wave-solution.js';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { close } from '../../helpers/close.js';
import { AIR, DEMO, IN_FRONT, ovalIn } from '../../helpers/demo-installations.js';
import { db, waveNumber } from './wave-cases.js';

const DRAFT = { accuracy: 'draft' } as const;
const level = (h: { re: Float64Array; im: Float64Array }, i: number) => db({ re: h.re[i], im: h.im[i] });

describe('waveSolution beside ruleOfThumb', () => {
  for (const [name, installation] of Object.entries(DEMO))
    for (const speaker of ['ideal', 'full'] as const)
      it(`has the same 0 dB, sign and low end: ${name}, ${speaker}`, () => {
        const frequency = Float64Array.of(0, 40, 80, 120);
        const wave = waveSolution(installation, AIR, IN_FRONT, frequency, speaker, DRAFT);
        const rule = ruleOfThumb(installation, AIR, IN_FRONT, frequency, speaker);
        expect(wave.frequency).toBe(frequency);
        for (const i of [1, 2, 3]) {
          // stated fits: plates 0.8 dB, shells 1 dB; a shell at 120 Hz
          close(level(wave, i), level(rule, i), { abs: 1.3, because: 'the fits of the rule of thumb' });
          const cos = wave.re[i] * rule.re[i] + wave.im[i] * rule.im[i];
          expect(
            cos / Math.hypot(wave.re[i], wave.im[i]) / Math.hypot(rule.re[i], rule.im[i])
          ).toBeGreaterThan(0.97);
        }
        const still = Math.hypot(wave.re[0], wave.im[0]);
        if (speaker === 'full' || installation.mount.kind !== 'box')
          close(still, 0, { abs: 1e-6, because: 'no direct current of sound' });
      });

  it('carries distance: near by, an open plate gains 1 + 1/(jkr)', () => {
    const frequency = Float64Array.of(60, 150);
    const mount = solveMount(DEMO['flat plate'], AIR, DRAFT);
    const at = (distance?: number) => waveResponse(mount, { ...IN_FRONT, distance }, frequency, 'ideal');
    const [near, far] = [at(1), at()];
    for (const [i, gain] of [
      [0, 2.6],
      [1, 0.5]
    ])
      close(level(near, i) - level(far, i), gain, {
        abs: 0.1,
        because: 'one decimal; a plate of 0.15 m seen from 1 m'
      });
  });
});

describe('waveSolution', () => {
  const mount = solveMount(DEMO['flat plate'], AIR, DRAFT);

  it('goes over into the cone alone beyond the highest frequency, without a step', () => {
    const { re, im, highest } = waveResponse(
      mount,
      IN_FRONT,
      Float64Array.of(3000, 3001, 6000, 20000),
      'ideal'
    );
    expect(highest).toBe(ACCURACY.draft.highest);
    close(re[1], re[0], { rel: 1e-5, because: 'a three-thousandth of an octave on' });
    close(im[1], im[0], { abs: 1e-5, because: 'a three-thousandth of an octave on' });
    for (const i of [2, 3]) {
      close(re[i], 1, { rel: 1e-9, because: 'straight ahead of an endless wall' });
      close(im[i], 0, { abs: 1e-9, because: 'straight ahead of an endless wall' });
    }
  });

  it('tells how it came about', () => {
    const response = waveResponse(mount, IN_FRONT, Float64Array.of(100), 'ideal');
    expect(response.unknowns).toBeGreaterThan(20);
    expect(response.solved).toBe(mount.curve.states.length);
    expect(response.interpolationErrorDb).toBeLessThanOrEqual(0.1);
    expect(response.load.re[0]).toBeGreaterThan(0);
  });

  for (const [name, installation] of Object.entries(DEMO))
    it(`has the resistance of the radiated power at low frequency, never below 0: ${name}`, () => {
      const lossless = solveMount(installation, AIR, { ...DRAFT, loss: 0 });
      const { problem } = lossless.curve;
      const low = Float64Array.of(15, 25, 50, 100, 200, 300, 500, 900);
      const { load } = waveResponse(lossless, IN_FRONT, low, 'ideal');
      low.forEach((f, i) => {
        const exact = -2 * Math.PI * f * 1.204 * acousticLoad(problem, solveWave(problem, waveNumber(f))).im;
        close(load.re[i], exact, {
          rel: 0.05,
          because: `an interpolation without care would err by its whole at ${f} Hz`
        });
      });
      const all = Float64Array.from({ length: 300 }, (_, i) => 10 * (i + 1));
      for (const re of waveResponse(lossless, IN_FRONT, all, 'full').load.re)
        expect(re).toBeGreaterThanOrEqual(0);
    });

  it('gives the same for the same question', () => {
    const frequency = Float64Array.of(100, 1000);
    const once = waveSolution(DEMO['free air'], AIR, IN_FRONT, frequency, 'full', DRAFT);
    const again = waveSolution(DEMO['free air'], AIR, IN_FRONT, frequency, 'full', DRAFT);
    expect([...again.re, ...again.im]).toEqual([...once.re, ...once.im]);
  });

  it('mirrors: plus and minus the angle are alike for a central cone', () => {
    const frequency = Float64Array.of(500, 2500);
    const [a, b] = [40, -40].map((angleDeg) =>
      waveResponse(mount, { angleDeg, plane: 'length' }, frequency, 'ideal')
    );
    for (const i of [0, 1]) close(a.re[i], b.re[i], { rel: 1e-6, because: 'symmetry' });
  });

  it('refuses what it cannot answer with one sentence', () => {
    const ask =
      (listener: Listener, f = 100) =>
      () =>
        waveResponse(mount, listener, Float64Array.of(f));
    expect(ask({ ...IN_FRONT, angleDeg: NaN })).toThrow(
      'angle of the listener must be within -360 … 360 °, got NaN'
    );
    expect(ask({ ...IN_FRONT, distance: 0.001 })).toThrow(/distance of the listener must be within/);
    expect(ask(IN_FRONT, -1)).toThrow('a frequency must be at least 0 Hz, got -1');
    expect(() => solveMount(DEMO['flat plate'], AIR, { loss: 1 })).toThrow(
      /loss factor must be within 0 … 0.2/
    );
    expect(() => solveMount(ovalIn({ kind: 'box', length: 0.01, width: 0.01, depth: 0.01 }), AIR)).toThrow(
      /larger than the front of the box/
    );
  });
});

/**
 * Mass of the air that moves with a round cone of radius b in the middle of a disc of radius a, both faces: E. T. Copson's
 * solution, from memory, 8ρ·[b³/3 + ∫_b^a (t − √(t² − b²))² dt]; b = a gives (8/3)·ρ·a³.
 */
function discMass(b: number, a: number): number {
  const { nodes, weights } = gaussLegendre(60);
  let rim = 0;
  nodes.forEach((node, i) => {
    // t = b + (a − b)·s² takes the root at b away
    const s = (node + 1) / 2;
    const t = b + (a - b) * s * s;
    rim += weights[i] * (a - b) * s * (t - Math.sqrt(t * t - b * b)) ** 2;
  });
  return 8 * 1.204 * (b ** 3 / 3 + rim);
}

describe('freeAirMass', () => {
  it('of a round cone in a round frame is that of the potential flow', () => {
    const [a, b] = [0.02, 0.014];
    const speaker = {
      ...SPEAKERS.oval,
      frame: { shape: 'round', diameter: 2 * a },
      cone: { shape: 'round', diameter: 2 * b }
    } as const;
    close(freeAirMass(speaker, AIR), discMass(b, a), {
      rel: 0.04,
      because: 'a draft mesh; it is 2 % of the moving mass'
    });
  });

  it('of the oval speaker is more than that of a bare disc of its area, and less than that in an endless plate', () => {
    const mass = freeAirMass(SPEAKERS.oval, AIR);
    const bare = (8 / 3) * 1.204 * (outlineArea(SPEAKERS.oval.cone) / Math.PI) ** 1.5;
    expect(mass).toBeGreaterThan(bare);
    expect(mass).toBeLessThan(2 * bare);
  });

  it('of it is in the moving mass that makers state: on a plate a speaker resonates lower by what the plate adds', () => {
    // A whole disc moving, in free air and in the middle of a plate: Lamb's and Copson's masses, from memory, both faces.
    const [cone, plate] = [0.018, 0.05];
    const added = discMass(cone, plate) - discMass(cone, cone);
    close(discMass(cone, cone), (8 / 3) * 1.204 * cone ** 3, {
      rel: 1e-6,
      because: 'the rim is gone; quadrature'
    });
    // A light cone and a soft spring: air is a tenth of the mass, and its waves are far longer than the plate.
    const motor = { ...SPEAKERS.oval.motor, mms: 10 * discMass(cone, cone), cms: 0.01 };
    const outline = { shape: 'round', diameter: 2 * cone } as const;
    const speaker = { ...SPEAKERS.oval, motor, cone: outline, frame: outline };
    const fs = 1 / (2 * Math.PI * Math.sqrt(motor.mms * motor.cms));
    const grid = Float64Array.from({ length: 241 }, (_, i) => fs * (0.9 + 0.0005 * i));
    // At resonance the drive stands at +j·Q: a quarter turn ahead of the same cone at the same velocity.
    const resonance = (mount: Mount) => {
      const installation = { speaker, mount, turn: 0 } as const;
      const solved = solveMount(installation, AIR, { accuracy: 'full' });
      const [full, ideal] = (['full', 'ideal'] as const).map((drive) =>
        waveResponse(solved, IN_FRONT, grid, drive)
      );
      return grid[grid.findIndex((_, i) => full.re[i] * ideal.re[i] + full.im[i] * ideal.im[i] > 0)] / fs;
    };
    close(resonance({ kind: 'free' }), 1, { abs: 0.001, because: 'where the makers measured it; the grid' });
    close(
      resonance({ kind: 'plate', shape: 'round', diameter: 2 * plate, offset: [0, 0] }),
      1 / Math.sqrt(1 + added / motor.mms),
      {
        abs: 0.004,
        because: `the mesh errs by a few percent of the added mass, which moves it by ${added / motor.mms / 2}`
      }
    );
  });
});
