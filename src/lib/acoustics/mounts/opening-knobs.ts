import { outlineArea, outlineLength, outlineWidth, turned } from '../outline.js';
import type { Installation } from '../installation.js';
import { leastBody, mostHoles, mostOpenings } from './check-openings.js';
import { LIMITS } from '../limits.js';
import type { BodyAround, Chassis, Grille, Leak, Mount, ShellMount } from './mount.js';
import { upToMillimetre, type Knob } from './size-knobs.js';

/** A size of what lets air through or stands in its way: its kind, and its key in the mount. */
export type OpeningKey =
  | `leak.${'gap' | 'length' | 'hole' | 'depth'}`
  | `chassis.${keyof Chassis}`
  | `grille.${keyof Grille}`
  | `body.${keyof BodyAround}`;

/** The largest sizes the knobs reach, in SI; a file may bring a larger one, and its knob then reaches that far. */
const REACH = {
  gap: 0.002,
  leakLength: 0.3,
  hole: 0.01,
  depth: 0.01,
  slit: 0.005,
  ends: 0.02,
  holes: 200,
  diameter: 0.01,
  thickness: 0.004,
  cavity: 0.01,
  bodyLength: 0.4,
  bodySide: 0.1
};

/** What is left between a magnet and a chassis, and of a wall beside a slit. */
const CLEAR = 0.001;

type Part = Omit<Knob<OpeningKey>, 'min' | 'max' | 'step'>;

function knob(part: Part, [least, most]: readonly [number, number], step: number): Knob<OpeningKey> {
  return { ...part, min: Math.min(least, part.value), max: Math.max(most, part.value), step };
}

/** The knobs of the openings that a mount has, each with the range in which it can be built. */
export function openingKnobs({ speaker, mount, turn }: Installation): Knob<OpeningKey>[] {
  const { leak, chassis, grille, body } = mount;
  return [
    ...(leak ? leakKnobs(mount, leak) : []),
    ...(chassis && mount.kind === 'shell' ? chassisKnobs(mount, chassis, speaker.depth) : []),
    ...(grille ? grilleKnobs(grille, turned(speaker.cone, turn)) : []),
    ...(body && mount.kind === 'box' ? bodyKnobs(body, leastBody(mount)) : [])
  ];
}

function leakKnobs(mount: Mount, leak: Leak): Knob<OpeningKey>[] {
  const depth = knob(
    { key: 'leak.depth', label: 'depth of the leak', value: leak.depth },
    [LIMITS.openingDepth[0], REACH.depth],
    0.0005
  );
  if ('hole' in leak) {
    const widest = mount.kind === 'box' ? Math.min(mount.length, mount.width) : REACH.hole;
    const range = [LIMITS.hole[0], Math.min(REACH.hole, widest)] as const;
    return [
      knob(
        { key: 'leak.hole', quantity: 'gap', label: 'diameter of the hole', value: leak.hole },
        range,
        0.0005
      ),
      depth
    ];
  }
  return [
    knob(
      { key: 'leak.gap', quantity: 'gap', label: 'gap of the leak', value: leak.gap },
      [LIMITS.leakGap[0], REACH.gap],
      0.00005
    ),
    knob(
      { key: 'leak.length', label: 'length of the leak', value: leak.length },
      [LIMITS.leakLength[0], REACH.leakLength],
      0.001
    ),
    depth
  ];
}

function chassisKnobs(shell: ShellMount, chassis: Chassis, depth: number): Knob<OpeningKey>[] {
  const highest = Math.max(0, shell.height - depth - CLEAR);
  return [
    knob({ key: 'chassis.height', label: 'chassis, its top', value: chassis.height }, [0, highest], 0.001),
    knob(
      { key: 'chassis.slit', quantity: 'gap', label: 'slit at each side', value: chassis.slit },
      [0, Math.min(REACH.slit, shell.width / 2 - CLEAR)],
      0.0001
    ),
    // Through open ends the chassis goes through.
    ...(shell.ends === 'open'
      ? []
      : [
          knob(
            { key: 'chassis.ends', quantity: 'gap', label: 'gap at each end', value: chassis.ends },
            [0, Math.min(REACH.ends, shell.length / 2 - CLEAR)],
            0.0005
          )
        ]),
    knob(
      { key: 'chassis.depth', label: 'depth of the slits', value: chassis.depth },
      [LIMITS.openingDepth[0], REACH.depth],
      0.0005
    ),
    knob(
      { key: 'chassis.fill', label: 'full above it', quantity: 'share', value: chassis.fill },
      LIMITS.fill,
      0.05
    )
  ];
}

function grilleKnobs(grille: Grille, cone: Parameters<typeof mostHoles>[0]): Knob<OpeningKey>[] {
  const { holes, diameter, thickness, cavity } = grille;
  // As wide as so many are while they lie as close as they can.
  const widest = Math.sqrt(outlineArea(cone) / Math.max(1, holes)) * CLOSE;
  return [
    knob(
      { key: 'grille.holes', label: 'holes', quantity: 'count', value: holes },
      [1, Math.min(REACH.holes, mostHoles(cone, diameter))],
      1
    ),
    knob(
      { key: 'grille.diameter', quantity: 'gap', label: 'their diameter', value: diameter },
      [LIMITS.holeDiameter[0], Math.min(REACH.diameter, widest, outlineLength(cone), outlineWidth(cone))],
      0.0001
    ),
    knob(
      { key: 'grille.thickness', quantity: 'gap', label: 'thickness of the grille', value: thickness },
      [LIMITS.grilleThickness[0], REACH.thickness],
      0.0001
    ),
    knob(
      { key: 'grille.cavity', label: 'cavity behind it', value: cavity },
      [LIMITS.cavity[0], REACH.cavity],
      0.0001
    )
  ];
}

/** A little less than the diameter of holes that lie as close as they can, over the side of the square that each has: √(2/√3). */
const CLOSE = 1.07;

function bodyKnobs(body: BodyAround, least: Omit<BodyAround, 'openings'>): Knob<OpeningKey>[] {
  // Its long sides must hold its openings.
  const share = body.openings / mostOpenings({ ...body, length: 1, height: 1 });
  return [
    knob(
      { key: 'body.length', label: 'body, length', value: body.length },
      [upToMillimetre(Math.max(least.length, share / body.height)), REACH.bodyLength],
      0.001
    ),
    knob(
      { key: 'body.width', label: 'body, width', value: body.width },
      [upToMillimetre(least.width), REACH.bodySide],
      0.001
    ),
    knob(
      { key: 'body.height', label: 'body, height', value: body.height },
      [upToMillimetre(Math.max(least.height, share / body.length)), REACH.bodySide],
      0.001
    ),
    knob(
      { key: 'body.openings', label: 'its openings', quantity: 'area', value: body.openings },
      [1e-5, mostOpenings(body) * (1 - 1e-9)],
      5e-5
    )
  ];
}

export function isOpeningKey(key: string): key is OpeningKey {
  return key.includes('.');
}

/** The mount with one size of one of its openings set. */
export function withOpeningKnob(mount: Mount, key: OpeningKey, value: number): Mount {
  const [kind, size] = key.split('.') as ['leak', string];
  return { ...mount, [kind]: { ...mount[kind], [size]: value + 0 } } as Mount;
}
