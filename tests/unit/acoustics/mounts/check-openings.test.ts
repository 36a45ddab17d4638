import { expect, test } from 'vitest';
import { checkInstallation } from '../../../../src/lib/acoustics/mounts/check-installation.js';
import { leastBody, mostHoles, mostOpenings } from '../../../../src/lib/acoustics/mounts/check-openings.js';
import type { Chassis, Grille, Mount, Openings } from '../../../../src/lib/acoustics/mounts/mount.js';
import { refusal } from '../../../../src/lib/acoustics/refusal.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';

const speaker = SPEAKERS.oval;
const PLATE: Mount = { kind: 'plate', shape: 'rectangle', length: 0.15, width: 0.1, offset: [0, 0] };
const SHELL: Mount = { kind: 'shell', length: 0.152, width: 0.033, height: 0.04, ends: 'closed', offset: 0 };
const BOX: Mount = { kind: 'box', length: 0.042, width: 0.029, depth: 0.017 };
const LEAK = { gap: 1e-4, length: 0.126, depth: 0.001 };
const CHASSIS: Chassis = { height: 0.008, slit: 0.001, ends: 0.002, depth: 0.001, fill: 0.4 };
const GRILLE: Grille = { holes: 20, diameter: 0.0015, thickness: 0.001, cavity: 0.002 };
const BODY = { length: 0.1, width: 0.035, height: 0.03, openings: 3e-4 };

function said(mount: Mount, openings: Openings): string | null {
  return refusal(() => checkInstallation({ speaker, mount: { ...mount, ...openings }, turn: 0 }));
}

test('what can be built passes', () => {
  for (const mount of [PLATE, SHELL, BOX]) expect(said(mount, { leak: LEAK, grille: GRILLE })).toBeNull();
  expect(said(SHELL, { chassis: CHASSIS, leak: LEAK })).toBeNull();
  expect(said(BOX, { body: BODY, leak: { hole: 0.002, depth: 0.001 } })).toBeNull();
  expect(said({ kind: 'free' }, { grille: GRILLE })).toBeNull();
});

test.each<[Mount, Openings, string]>([
  [{ kind: 'free' }, { leak: LEAK }, 'free air has no leak: there is air all round the frame already'],
  [
    SHELL,
    { leak: { hole: 0.002, depth: 0.001 } },
    'only a box has a wall to put a hole through: a shell leaks round the frame, by gap and length'
  ],
  [
    BOX,
    { leak: { hole: 0.03, depth: 0.001 } },
    'the hole (ø 30 mm) is wider than the box (42 × 29 mm inside)'
  ],
  [BOX, { leak: { ...LEAK, gap: 0.01 } }, 'gap of the leak must be within 0.001 … 5 mm, got 10'],
  [BOX, { leak: { ...LEAK, depth: 0 } }, 'depth of the leak must be within 0.1 … 50 mm, got 0'],
  [BOX, { chassis: CHASSIS }, 'only a shell has a chassis in it, a mount of kind box has none'],
  [
    SHELL,
    { chassis: { ...CHASSIS, height: 0.045 } },
    "the chassis (its top 45 mm above the shell's lower edge) is taller than the shell (40 mm high inside)"
  ],
  [
    SHELL,
    { chassis: { ...CHASSIS, height: -0.001 } },
    'height of the chassis must be within 0 … 40 mm, got -1'
  ],
  [
    SHELL,
    { chassis: { ...CHASSIS, slit: 0.02 } },
    'the slits along the chassis (two of 20 mm) are wider than the shell (33 mm wide inside)'
  ],
  [
    { ...SHELL, length: 0.06, ends: 'open' },
    { chassis: { ...CHASSIS, ends: 0.03 } },
    'the gaps at the ends of the chassis (two of 30 mm) are longer than the shell (60 mm long inside)'
  ],
  [SHELL, { chassis: { ...CHASSIS, fill: 1 } }, 'fill above the chassis must be within 0 … 90 %, got 100'],
  [
    SHELL,
    { chassis: { ...CHASSIS, height: 0.032 } },
    'the magnet touches the chassis: it reaches 12 mm below the roof, and the chassis is 8 mm below it'
  ],
  [PLATE, { grille: { ...GRILLE, holes: 2.5 } }, 'a grille must have a whole number of holes, got 2.5'],
  [
    PLATE,
    { grille: { ...GRILLE, holes: 400 } },
    'at most 308 holes of ø 1.5 mm fit over the cone (34 × 22.5 mm), got 400'
  ],
  [
    PLATE,
    { grille: { ...GRILLE, holes: 1, diameter: 0.03 } },
    'at most 0 holes of ø 30 mm fit over the cone (34 × 22.5 mm), got 1'
  ],
  [SHELL, { body: BODY }, 'only a closed box has a body round it, a mount of kind shell has none'],
  [
    BOX,
    { body: { ...BODY, width: 0.03 } },
    'the body (100 × 30 × 30 mm inside) is smaller than its box (42 × 29 × 17 mm inside, and 1 mm of air on every side)'
  ],
  [
    BOX,
    { body: { ...BODY, openings: 0.006 } },
    "the body's openings (60 cm²) are larger than its two long sides hold (48 cm²)"
  ]
])('%j with %j', (mount, openings, sentence) => {
  expect(said(mount, openings)).toBe(sentence);
});

test('a grille over two speakers is refused, a leak round two is not', () => {
  const second = { at: [0.05, 0], wiring: 'series', reversed: false } as const;
  const two = (openings: Openings) =>
    refusal(() => checkInstallation({ speaker, mount: { ...SHELL, ...openings }, turn: 0, second }));
  expect(two({ leak: LEAK, chassis: CHASSIS })).toBeNull();
  expect(two({ grille: GRILLE })).toBe(
    'a grille is known over one speaker alone: take the second speaker out, or leave the grille out'
  );
});

test('the bounds that depend on the mount are those that are refused beyond', () => {
  const most = mostHoles(speaker.cone, GRILLE.diameter);
  expect(said(PLATE, { grille: { ...GRILLE, holes: most } })).toBeNull();
  expect(said(PLATE, { grille: { ...GRILLE, holes: most + 1 } })).toContain(`got ${most + 1}`);
  const body = { ...leastBody(BOX), openings: 1e-4 };
  expect(said(BOX, { body })).toBeNull();
  expect(said(BOX, { body: { ...body, openings: mostOpenings(body) } })).toBeNull();
});
