import { describe, expect, it, test } from 'vitest';
import type { Installation } from '../../src/lib/acoustics/installation.js';
import type { Mount } from '../../src/lib/acoustics/mounts/mount.js';
import { outlineArea, outlineLength, turned } from '../../src/lib/acoustics/outline.js';
import { closedBox } from '../../src/lib/acoustics/rule/closed-box.js';
import {
  coilCurrents,
  type DrivenCones,
  electricalImpedance,
  type Wiring
} from '../../src/lib/acoustics/speaker/driven-cones.js';
import { motorFigures } from '../../src/lib/acoustics/speaker/motor-figures.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { ruleAnswer } from '../../src/lib/evaluation/answer.js';
import { zeroAtListenerDb } from '../../src/lib/evaluation/sound-level.js';
import { levelDb } from '../../src/lib/numeric/level-db.js';
import { hearWaves, heardResponse } from '../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../src/lib/waves/wave-solution.js';
import { close } from '../helpers/close.js';
import { AIR, IN_FRONT } from '../helpers/demo-installations.js';
import { everyInstallation, fits } from '../helpers/random-installations.js';

/** Where an impedance is highest, by a parabola through its three highest points, and how high. */
function peakOf(driven: DrivenCones): { frequency: number; ohms: number } {
  const { re, im } = electricalImpedance(driven);
  const ohms = [...re.keys()].map((i) => Math.hypot(re[i], im[i]));
  const i = ohms.indexOf(Math.max(...ohms));
  const [below, top, above] = [ohms[i - 1], ohms[i], ohms[i + 1]];
  const shift = (below - above) / (2 * (below - 2 * top + above));
  const step = driven.frequency[i + 1] - driven.frequency[i];
  return { frequency: driven.frequency[i] + shift * step, ohms: top - ((below - above) * shift) / 4 };
}

describe('a speaker in free air', () => {
  // A bare disc that moves as a whole. Its air by H. Lamb, Hydrodynamics, 6th ed., art. 102 (number from memory), (8/3)·ρ·a³, is taken off
  // the stated moving mass; the wave solution puts its own on again.
  const a = 0.018;
  const lamb = (8 / 3) * 1.2041 * a ** 3;
  const outline = { shape: 'round', diameter: 2 * a } as const;
  const motor = { ...SPEAKERS.oval.motor, mms: 10 * lamb, cms: 0.004, bl: 0.5 };
  const installation: Installation = {
    speaker: { ...SPEAKERS.oval, cone: outline, frame: outline, motor },
    mount: { kind: 'free' },
    turn: 0
  };
  const { fs, qes } = motorFigures(motor, outlineArea(outline), AIR);
  const frequency = Float64Array.from({ length: 121 }, (_, i) => fs * (0.85 + 0.0025 * i));
  const heard = hearWaves(solveMount(installation, AIR, { accuracy: 'full' }), IN_FRONT);
  const peak = (airMass: number) =>
    peakOf(heardResponse({ ...heard, airMass }, installation, AIR, frequency).driven!);

  it('shows its own fs on the impedance curve, and Re·(1 + Qms/Qes) there (Small 1972)', () => {
    const { frequency: at, ohms } = peak(lamb);
    close(at, fs, { rel: 0.003, because: 'the air is a tenth of the mass; its mesh is off by 2 % of it' });
    close(ohms, motor.re * (1 + motor.qms / qes), {
      rel: 0.005,
      because: 'the air radiates next to nothing'
    });
  });

  it('is off by what the air weighs where nothing was taken off', () => {
    close(peak(0).frequency, fs / Math.sqrt(1.1), { rel: 0.003, because: 'a tenth of the mass twice' });
  });
});

test('in a large plate a speaker gives its half-space sensitivity, with its own high-pass', () => {
  const mount: Mount = { kind: 'plate', shape: 'rectangle', length: 3, width: 3, offset: [0, 0] };
  for (const speaker of Object.values(SPEAKERS)) {
    const frequency = Float64Array.of(1500, 3000, 6000);
    const { re, im } = ruleAnswer({ speaker, mount, turn: 0 }, AIR, IN_FRONT).respond(frequency);
    const levels = levelDb({ re, im });
    const { fs, qts } = motorFigures(speaker.motor, outlineArea(speaker.cone), AIR);
    const { bl, mms, re: coil } = speaker.motor;
    frequency.forEach((f, i) => {
      // R. H. Small, J. Audio Eng. Soc. 20 (1972) 383: p = ρ·Sd·Bl·U/(2π·r·Re·Mms)·|s²/(s² + s·ω0/Q + ω0²)|, 2 V at 0.5 m
      const pascals = (1.2041 * outlineArea(speaker.cone) * bl * 2) / (2 * Math.PI * 0.5 * coil * mms);
      const x = fs / f;
      const expected = 20 * Math.log10(pascals / 20e-6 / Math.hypot(1 - x * x, x / qts));
      close(levels[i] + zeroAtListenerDb(speaker, AIR, 2, { distance: 0.5 }), expected, {
        abs: 0.05,
        because: 'bar; the plate’s edge is 1.5 m away'
      });
    });
  }
});

/** Total Q off the impedance curve, by the two frequencies at which it is Re·√r0 (Small 1972). */
function totalQ(driven: DrivenCones): number {
  const { re, im } = electricalImpedance(driven);
  const { frequency, ohms } = peakOf(driven);
  const r0 = ohms / driven.motor.re;
  const above = [...re.keys()].filter((i) => Math.hypot(re[i], im[i]) > driven.motor.re * Math.sqrt(r0));
  const width = driven.frequency[above.at(-1)!] - driven.frequency[above[0]];
  return (frequency * Math.sqrt(r0)) / width / r0;
}

describe('in a closed box the solved load stays with the lumped one', () => {
  it.each([
    ['oval', 0.042, 0.03, 0.017, 0.0],
    ['oval', 0.05, 0.04, 0.03, -0.1],
    ['round-23', 0.05, 0.04, 0.03, -0.3]
  ])('%s in %f × %f × %f m', (key, length, width, depth, percent) => {
    const { motor, cone } = SPEAKERS[key];
    const installation: Installation = {
      speaker: { ...SPEAKERS[key], bodyVolume: 0 },
      mount: { kind: 'box', length, width, depth },
      turn: 0
    };
    const area = outlineArea(cone);
    const lumped = closedBox(motorFigures(motor, area, AIR), length * width * depth);
    const solved = solveMount(installation, AIR, { accuracy: 'full', loss: 0 });
    const heard = hearWaves(solved, IN_FRONT);
    const frequency = Float64Array.from({ length: 6001 }, (_, i) => lumped.fc * (0.4 + 0.0003 * i));
    const { driven } = heardResponse(heard, installation, AIR, frequency);
    const { frequency: fc } = peakOf(driven!);
    close(fc, lumped.fc, { rel: 0.005, because: 'bar' });
    close(totalQ(driven!), lumped.qtc, { rel: 0.005, because: 'bar; the step of the grid' });
    expect(((fc / lumped.fc - 1) * 100).toFixed(1)).toBe(percent.toFixed(1));

    // Why: the air in the box and before it weighs nearly what free air does. Its mass and its spring, from the load at two frequencies.
    const [low, high] = [100, 400].map((f) => 2 * Math.PI * f);
    const { im } = heardResponse(heard, installation, AIR, Float64Array.of(100, 400)).load;
    const mass = ((im[1] * high - im[0] * low) / (high ** 2 - low ** 2)) * area ** 2;
    const heavier = (mass - solved.airMass) / motor.mms;
    close(fc / lumped.fc, 1 / Math.sqrt(1 + heavier), {
      abs: 0.0005,
      because: 'the spring is the lumped one'
    });
  });
});

const WIRINGS: Wiring[] = (['parallel', 'series'] as const).flatMap((wiring) =>
  [false, true].map((reversed) => ({ wiring, reversed }))
);

/** Power in, and what becomes of it, for 1 V at each frequency. */
function powers(driven: DrivenCones) {
  const { motor, frequency, displacement } = driven;
  const z = electricalImpedance(driven);
  const currents = coilCurrents(driven);
  const rms = Math.sqrt(motor.mms / motor.cms) / motor.qms;
  return [...frequency.keys()].map((i) => ({
    taken: z.re[i] / (z.re[i] ** 2 + z.im[i] ** 2),
    heat: currents.reduce((sum, { re, im }) => sum + motor.re * (re[i] ** 2 + im[i] ** 2), 0),
    friction: displacement.reduce(
      (sum, { re, im }) => sum + rms * (2 * Math.PI * frequency[i]) ** 2 * (re[i] ** 2 + im[i] ** 2),
      0
    )
  }));
}

/** Any speaker in any mount, alone and with a second one beside it in every wiring where there is room. */
function everyWiring(installation: Installation): Installation[] {
  const apart = outlineLength(turned(installation.speaker.frame, installation.turn)) + 0.001;
  const { mount } = installation;
  const moved =
    mount.kind === 'plate'
      ? { ...mount, offset: [-apart / 2, 0] as [number, number] }
      : mount.kind === 'shell'
        ? { ...mount, offset: -apart / 2 }
        : mount;
  const at: [number, number] = [mount.kind === 'box' ? apart : apart / 2, 0];
  return [
    installation,
    ...WIRINGS.map((wiring) => ({ ...installation, mount: moved, second: { at, ...wiring } }))
  ].filter(fits);
}

describe('any valid speaker, mount and wiring is finite and passive, and power in = heat + friction + what the air takes', () => {
  const grid = Float64Array.of(20, 80, 300, 700, 2000, 2900);

  it('by the rule of thumb, whose air takes nothing', () => {
    let pairs = 0;
    for (const installation of everyInstallation().flatMap(everyWiring)) {
      pairs += installation.second ? 1 : 0;
      const answer = ruleAnswer(installation, AIR, IN_FRONT);
      const { re, im } = answer.respond(grid);
      for (const value of [...re, ...im]) expect(value).toSatisfy(Number.isFinite);
      for (const { taken, heat, friction } of powers(answer.driven(grid))) {
        expect(taken).toBeGreaterThan(0);
        close(heat + friction, taken, { rel: 0.01, because: 'bar' });
      }
    }
    expect(pairs).toBeGreaterThan(100);
  });

  it('by the wave solution: what is left of it goes into the air, and is never taken out of it', () => {
    const all = everyInstallation().flatMap(everyWiring);
    const some = [3, 40, 77, 120, 163, 200].map((i) => all[Math.floor((i / 210) * all.length)]);
    for (const installation of some) {
      const heard = hearWaves(solveMount(installation, AIR, { accuracy: 'draft' }), IN_FRONT);
      const { re, im, driven } = heardResponse(heard, installation, AIR, grid);
      for (const value of [...re, ...im]) expect(value).toSatisfy(Number.isFinite);
      for (const { taken, heat, friction } of powers(driven!)) {
        expect(taken).toBeGreaterThan(0);
        expect((taken - heat - friction) / taken).toBeGreaterThan(-1e-9);
      }
    }
  });
});
