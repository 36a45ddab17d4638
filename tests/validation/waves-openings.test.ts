import { describe, expect, it } from 'vitest';
import type { Installation } from '../../src/lib/acoustics/installation.js';
import type { Board } from '../../src/lib/acoustics/mounts/board.js';
import type {
  BodyAround,
  BoxMount,
  Chassis,
  Grille,
  Mount,
  ShellMount
} from '../../src/lib/acoustics/mounts/mount.js';
import { slitImpedance } from '../../src/lib/acoustics/openings/narrow-opening.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { acousticLoad } from '../../src/lib/waves/field/acoustic-load.js';
import { transfer } from '../../src/lib/waves/field/transfer.js';
import { farField } from '../../src/lib/waves/field/far-field.js';
import { ACCURACY } from '../../src/lib/waves/mesh/accuracy.js';
import { mountMesh } from '../../src/lib/waves/mesh/mount-mesh.js';
import { mountProblem } from '../../src/lib/waves/solve/mount-problem.js';
import type { Complex } from '../../src/lib/numeric/complex.js';
import {
  solveWave,
  waveProblem,
  type WaveProblem,
  type WaveState
} from '../../src/lib/waves/solve/wave-problem.js';
import { waveSolution } from '../../src/lib/waves/wave-solution.js';
import { close } from '../helpers/close.js';
import { C, db, lostShare, powerRatio, toward, waveNumber } from '../unit/waves/wave-cases.js';

const AIR = { temperatureC: 20 };
const RHO = 1.204;
const speaker = SPEAKERS.oval;
const BOX: BoxMount = { kind: 'box', length: 0.042, width: 0.029, depth: 0.017 };
const SHELL: ShellMount = {
  kind: 'shell',
  length: 0.1,
  width: 0.034,
  height: 0.035,
  ends: 'closed',
  offset: 0
};
const CHASSIS: Chassis = { height: 0.008, slit: 0.001, ends: 0.002, depth: 0.001, fill: 0.4 };
/** All round the frame. */
const LEAK = { gap: 1e-4, length: 0.126, depth: 0.001 };

const GRILLE: Grille = { holes: 20, diameter: 0.0015, thickness: 0.002, cavity: 0.002 };
/** 100 cm³ beside the box in it. */
const BODY: BodyAround = { length: 0.1, width: 0.039, height: 0.031, openings: 3e-4 };

function installed(mount: Mount, board?: Board): Installation {
  return { speaker, mount, turn: 0, ...(board && { board }) };
}

function solved(installation: Installation, f: number) {
  const { problem } = mountProblem(installation, AIR, { accuracy: 'draft', loss: 0 });
  return { problem, state: solveWave(problem, waveNumber(f)) };
}

describe('openings', () => {
  it.each<[string, Mount, Board | undefined, number]>([
    ['a leaky box', { ...BOX, leak: LEAK }, undefined, 700],
    [
      'a box with a hole, over the board',
      { ...BOX, leak: { hole: 0.002, depth: 0.001 } },
      { above: 0.01, facing: 'down' },
      520
    ],
    ['a chassis with mechanism', { ...SHELL, chassis: CHASSIS }, undefined, 1300],
    [
      'chassis and leak over the board, off the middle',
      { ...SHELL, offset: 0.012, chassis: CHASSIS, leak: LEAK },
      { above: 0.014, facing: 'up' },
      1500
    ],
    [
      'a chassis in open ends, roof down',
      { ...SHELL, ends: 'open', chassis: CHASSIS },
      { above: 0.02, facing: 'down' },
      1500
    ],
    [
      'a leaky plate',
      { kind: 'plate', shape: 'round', diameter: 0.09, offset: [0.01, 0], leak: { ...LEAK, gap: 3e-4 } },
      undefined,
      900
    ],
    ['a grille over a leaky box', { ...BOX, leak: LEAK, grille: GRILLE }, undefined, 2900],
    [
      'a grille on a shell with its chassis, over the board, off the middle',
      { ...SHELL, offset: -0.01, chassis: CHASSIS, grille: { ...GRILLE, holes: 6 } },
      { above: 0.014, facing: 'up' },
      2700
    ],
    [
      'a round plate under a grille',
      { kind: 'plate', shape: 'round', diameter: 0.06, offset: [0, 0.004], grille: GRILLE },
      { above: 0.03, facing: 'down' },
      2000
    ],
    ['a box in its body', { ...BOX, body: BODY }, undefined, 1200],
    [
      'a leaky box in its body, facing down',
      { ...BOX, leak: LEAK, body: BODY },
      { above: 0.014, facing: 'down' },
      900
    ]
  ])('keep the power: %s', (_, mount, board, f) => {
    const { problem, state } = solved(installed(mount, board), f);
    const lost = lostShare(problem, state);
    close(powerRatio(problem, state) / (board ? 2 : 1) + lost, 1, {
      abs: 1e-4,
      because: `power at the cone is radiated or lost in slits, here ${(100 * lost).toFixed(1)} %`
    });
  });

  it('leave two cones exchanged what they were', () => {
    const installation = installed(
      { ...SHELL, chassis: CHASSIS, leak: LEAK },
      { above: 0.014, facing: 'up' }
    );
    const { mesh, patches, chambers } = mountMesh(installation, C, ACCURACY.draft);
    const cone = { shape: 'round' as const, diameter: 0.014 };
    const pistons = [
      { outline: cone, middle: [-0.03, 0, 0] as const },
      { outline: { ...cone, diameter: 0.01 }, middle: [0.02, 0.004, 0] as const }
    ];
    const problem = waveProblem(mesh, pistons, 0.01, patches, chambers);
    const state = solveWave(problem, waveNumber(1400));
    const [a, b] = [acousticLoad(problem, state, 0, 1), acousticLoad(problem, state, 1, 0)];
    close(Math.hypot(a.re - b.re, a.im - b.im) / Math.hypot(a.re, a.im), 0, {
      abs: 1e-9,
      because: 'reciprocity'
    });
  });

  it('a chassis that leaves no slits makes a shell the box of that volume', () => {
    const sealed: Chassis = { height: 0, slit: 0, ends: 0, depth: 0.001, fill: 0 };
    const box: Mount = { kind: 'box', length: 0.1, width: 0.034, depth: 0.035 };
    const frequency = Float64Array.of(60, 200, 500, 1000, 2500);
    for (const angleDeg of [0, 70]) {
      const [a, b] = [{ ...SHELL, chassis: sealed }, box].map((mount) =>
        waveSolution(installed(mount), AIR, { angleDeg, plane: 'width' }, frequency, 'full', {
          accuracy: 'draft'
        })
      );
      frequency.forEach((f, i) => {
        const because =
          'the same surface, meshed as a shell is and as a box is; the body of the speaker counts in both';
        close(db({ re: a.re[i], im: a.im[i] }), db({ re: b.re[i], im: b.im[i] }), { abs: 0.05, because });
        if (f < 1000)
          close(Math.hypot(a.load.re[i], a.load.im[i]), Math.hypot(b.load.re[i], b.load.im[i]), {
            rel: 0.005,
            because
          });
      });
    }
  });

  it('and one that stands higher the box of what is above it, mechanism taken off', () => {
    for (const fill of [0, 0.5]) {
      const { problem, state } = solved(
        installed({ ...SHELL, chassis: { ...CHASSIS, slit: 0, ends: 0, fill } }),
        100
      );
      const volume = 0.1 * 0.034 * 0.027 * (1 - fill) - speaker.bodyVolume;
      // −1/(k²V) is the spring over jωρ; the air outside is a mass
      const outside = solved(installed({ ...SHELL, chassis: { ...CHASSIS, fill } }), 100);
      const mass = acousticLoad(outside.problem, outside.state).re;
      close(acousticLoad(problem, state).re, -1 / (state.k ** 2 * volume), {
        abs: mass,
        because:
          'spring of the air that is left; what moves outside is a mass less than that of the open chassis'
      });
    }
  });

  it('a grille before a box is the lumped circuit of its cavity and the air in its holes', () => {
    const cone = speaker.cone as { length: number; width: number };
    const [covered, plain] = [{ ...BOX, grille: GRILLE }, BOX].map(
      (mount) => mountProblem(installed(mount), AIR, { loss: 0 }).problem
    );
    const open = GRILLE.holes * (Math.PI / 4) * GRILLE.diameter ** 2;
    const lid = cone.length * cone.width;
    // holes with their ends, less as they lie close, and the air before the lid: about 0.4 of its side (0.47 in a wall, 0.34 without one)
    const apart = 1 - 1.4092 * Math.sqrt(open / lid);
    const length = GRILLE.thickness + 0.849 * GRILLE.diameter * apart;
    const inertance = length / open + 0.4 / Math.sqrt(lid);
    const volume = lid * GRILLE.cavity;
    for (const f of [500, 1000, 2000, 3000]) {
      const k = waveNumber(f);
      const [a, b] = [covered, plain].map((problem) =>
        db(farField(problem, solveWave(problem, k), toward(60)))
      );
      close(a - b, -20 * Math.log10(1 - k * k * volume * inertance), {
        abs: 0.1 + 0.3 * (f / 3000) ** 2,
        because: 'a compliance and a mass; friction in the holes is small'
      });
    }
  });

  it('a leaky box is the lumped circuit of its spring and the leak below 500 Hz', () => {
    const [leaky, tight] = [{ ...BOX, leak: LEAK }, BOX].map(
      (mount) => mountProblem(installed(mount), AIR, { loss: 0 }).problem
    );
    const volume = BOX.length * BOX.width * BOX.depth - speaker.bodyVolume;
    // either end of a slit along ℓ in an endless wall: ρ·(ln(2ℓ/g) + ½)/(πℓ), the mean over a thin strip
    const ends = (2 * (Math.log((2 * LEAK.length) / LEAK.gap) + 0.5)) / (Math.PI * LEAK.length);
    for (const f of [50, 100, 200, 350, 500]) {
      const w = 2 * Math.PI * f;
      const zs = -(RHO * C * C) / (w * volume);
      const slit = slitImpedance(LEAK, f, RHO);
      const z = { re: slit.re, im: slit.im + w * RHO * ends };
      // volume velocity out of cone and leak: U·(1 − Zs/(Zs + Zl))
      const expected = 20 * Math.log10(Math.hypot(z.re, z.im) / Math.hypot(z.re, z.im + zs));
      const [a, b] = [leaky, tight].map((problem) => {
        const state = solveWave(problem, waveNumber(f));
        const [front, back] = [0, 180].map((angle) => farField(problem, state, toward(angle)));
        return {
          all: db({ re: (front.re + back.re) / 2, im: (front.im + back.im) / 2 }),
          side: db(farField(problem, state, toward(90)))
        };
      });
      close(a.all - b.all, expected, {
        abs: 0.2,
        because: 'what goes out alike to front and back is the volume velocity'
      });
      close(a.side - b.side, expected, {
        abs: 0.3,
        because: 'to the side air that moves from cone to leak adds little'
      });
    }
  });
});

describe('what is interpolated over frequency', () => {
  it.each<[string, Mount]>([
    ['a leak', { ...BOX, leak: LEAK }],
    ['a hole that resonates near 500 Hz', { ...BOX, leak: { hole: 0.002, depth: 0.001 } }],
    ['a leak too fine to matter', { ...BOX, leak: { ...LEAK, gap: 1e-5 } }],
    ['a chassis', { ...SHELL, chassis: CHASSIS }],
    [
      'a leaky plate',
      { kind: 'plate', shape: 'rectangle', length: 0.08, width: 0.06, offset: [0, 0], leak: LEAK }
    ]
  ])('is what is solved there, from 20 Hz up: %s', (_, mount) => {
    const frequency = Float64Array.of(20, 45, 90, 170, 260, 410, 530, 770, 1250, 1900, 2600);
    const listener = { angleDeg: 40, plane: 'width' as const };
    const got = waveSolution(installed(mount), AIR, listener, frequency, 'ideal', { accuracy: 'draft' });
    const { problem } = mountProblem(installed(mount), AIR, { accuracy: 'draft' });
    frequency.forEach((f, i) => {
      const state = solveWave(problem, waveNumber(f));
      const z = acousticLoad(problem, state);
      const w = 2 * Math.PI * f * RHO;
      close(db({ re: got.re[i], im: got.im[i] }), db(transfer(problem, state, listener)), {
        abs: 0.03,
        because: 'the rational function through 13 to 19 solutions'
      });
      close(
        Math.hypot(got.load.re[i] + w * z.im, got.load.im[i] - w * z.re) / (w * Math.hypot(z.re, z.im)),
        0,
        {
          abs: 0.01,
          because: 'the load too, which is friction, mass or spring by turns'
        }
      );
    });
  });
});

/** What passes the first patch over what the cone moves. */
function through(
  { surface, pistons, patches, chambers }: WaveProblem,
  { k, jumps, raised }: WaveState
): Complex {
  const { mass, admittance } = patches[0];
  const even = surface.classes.findIndex(({ odd }) => odd.length === 0);
  const sum = { re: 0, im: 0 };
  const entries = mass.entries[even];
  const { re, im } = jumps[0][even]!;
  for (let e = 0; e < entries.length; e += 3)
    for (const i of new Set([entries[e], entries[e + 1]])) {
      const lifted = chambers.map(({ wall }) => wall[i]);
      sum.re += entries[e + 2] * (re[i] + lifted.reduce((all, one, c) => all + one * raised[0][c].re, 0));
      sum.im += entries[e + 2] * (im[i] + lifted.reduce((all, one, c) => all + one * raised[0][c].im, 0));
    }
  const y = admittance(k, 0, mass.area);
  const scale = surface.copies / pistons[0].area;
  return { re: scale * (y.re * sum.re - y.im * sum.im), im: scale * (y.re * sum.im + y.im * sum.re) };
}

/** Level of a mount at some frequencies in front, as its own speaker drives it. */
function levels(mount: Mount, frequency: number[], speakerKind: 'ideal' | 'full' = 'ideal'): number[] {
  const { re, im } = waveSolution(
    installed(mount),
    AIR,
    { angleDeg: 0, plane: 'width' },
    Float64Array.from(frequency),
    speakerKind,
    { accuracy: 'draft' }
  );
  return frequency.map((_, i) => db({ re: re[i], im: im[i] }));
}

describe('figures of an independent computation (coarse, without the motor unless told)', () => {
  it('a gap of 0.1 mm round the frame costs a small box 3 dB at 300 Hz and 7 dB at 500 Hz', () => {
    const leak = { ...LEAK, depth: 0.002 };
    const [leaky, tight] = [{ ...BOX, leak }, BOX].map((mount) => levels(mount, [300, 500], 'full'));
    close(leaky[0] - tight[0], -3, { abs: 0.7, because: 'a frame 2 mm thick' });
    close(leaky[1] - tight[1], -7, { abs: 0.7, because: 'a frame 2 mm thick' });
  });

  it('20 holes of 1.5 mm over a cavity of 2 mm: +15 dB near 5 kHz, −12 dB at 10 kHz; six: +10 dB at 3 kHz, −13 dB at 6 kHz', () => {
    const gain = (holes: number, f: number) => {
      const { problem } = mountProblem(installed({ ...BOX, grille: { ...GRILLE, holes } }), AIR);
      return db(through(problem, solveWave(problem, waveNumber(f))));
    };
    const because = 'about: the thickness of the grille is taken to be 2 mm';
    close((gain(20, 4600) + gain(20, 5000)) / 2, 15, { abs: 2, because });
    close(gain(20, 10000), -12, { abs: 3, because });
    close(gain(6, 3000), 10, { abs: 3.5, because });
    close(gain(6, 6000), -13, { abs: 1, because });
  });

  it('a body of 100 cm³ with 3 cm² of openings is a low-pass near 1.3 kHz', () => {
    const [inside, alone] = [{ ...BOX, body: BODY }, BOX].map((mount) =>
      levels(mount, [100, 300, 1000, 1300, 1600, 2000, 3000])
    );
    const gain = inside.map((level, i) => level - alone[i]);
    close(gain[0], 0, { abs: 0.1, because: 'all of it comes out, slowly' });
    expect(gain.indexOf(Math.max(...gain))).toBe(3);
    expect(gain[5]).toBeLessThan(-3);
    expect(gain[6]).toBeLessThan(-12);
  });

  it('slits of 1 mm move the ring of a shell from about 1.5 to 0.9 kHz', () => {
    const shell: ShellMount = { ...SHELL, length: 0.152, width: 0.03, height: 0.045 };
    const frequency = Array.from({ length: 60 }, (_, i) => 500 + 20 * i);
    const ring = (mount: Mount) => {
      const all = levels(mount, frequency);
      return frequency[all.indexOf(Math.max(...all.slice(0, 55)))];
    };
    close(ring(shell), 1500, { rel: 0.1, because: 'about' });
    close(ring({ ...shell, chassis: { ...CHASSIS, fill: 0, ends: 0.001 } }), 900, {
      rel: 0.12,
      because: 'about'
    });
  });
});
