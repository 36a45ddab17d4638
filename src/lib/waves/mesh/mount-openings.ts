import { densityAt } from '../../acoustics/air.js';
import type { Installation } from '../../acoustics/installation.js';
import type {
  BodyAround,
  BoxMount,
  Chassis,
  Grille,
  HoleLeak,
  ShellMount,
  SlitLeak
} from '../../acoustics/mounts/mount.js';
import {
  holeInertance,
  slitInertance,
  type Hole,
  type Slit,
  type Swing
} from '../../acoustics/openings/narrow-opening.js';
import { outlineLength, outlineWidth, turned } from '../../acoustics/outline.js';
import type { Complex } from '../../numeric/complex.js';
import type { Metres, MetresPerSecond, SquareMetres } from '../../units.js';
import { lidOf, middleOf, SHEETS } from './mount-parts.js';
import type { Patch, PatchArea } from './patch.js';

/** The ring round a cone over which a leak is spread has at least this share of its width. */
const RING = 0.06;
/** The strips over which the slits of a chassis are spread, as a share of its width, and of its length at most. */
const STRIP = { width: 1 / 8, length: 1 / 10 };
/** The openings of a body are taken for round holes of this size: doors, windows and gaps at the chassis. An assumption. */
const BODY_HOLE: Hole = { diameter: 0.006, depth: 0.001 };
/** A hole is spread over a square of this share of the shorter side of its wall. */
const SQUARE = 0.5;

/** ∫∫ 1/(2πr) over a unit square, twice, over its area: the mass of the air before one that moves evenly in a wall. */
const SQUARE_MASS = 0.4733;
/** The ends of a round hole in a thin wall, both together, in diameters (8/(3π), two half-spaces). */
const HOLE_ENDS = 8 / (3 * Math.PI);

/** The openings of a mount as patches of its surface. */
export function mountPatches(installation: Installation, c: MetresPerSecond): Patch[] {
  const { mount } = installation;
  const density = densityAt(c);
  const swing = (k: number, damping: number): Swing => ({ frequency: (k * c) / (2 * Math.PI), damping });
  const { leak } = mount;
  const patches: Patch[] = [];
  if (leak && 'gap' in leak) patches.push(slitLeak(installation, leak, density, swing));
  if (leak && 'hole' in leak) patches.push(holeLeak(installation, leak, density, swing));
  if (mount.kind === 'shell' && mount.chassis)
    patches.push(...chassisSlits(mount, mount.chassis, density, swing));
  if (mount.grille) patches.push(grilleHoles(installation, mount.grille, density, swing));
  if (mount.kind === 'box' && mount.body) patches.push(bodyOpenings(mount, mount.body, density, swing));
  return patches;
}

type SwingAt = (k: number, damping: number) => Swing;

/** jωρ/Z of a patch where Z/(jωρ) is what is given, in metres. */
function admittanceOf({ re, im }: Complex): Complex {
  const square = re * re + im * im;
  return { re: re / square, im: -im / square };
}

/**
 * What an isolated slit adds to one that is spread evenly over a strip of width W: (2W/π)·ln(0.893·W/g), both sides together, in metres
 * (derived: docs/models/openings.md). Not below 0: a gap as wide as its strip adds nothing.
 */
export function slitEnds(strip: Metres, gap: Metres): Metres {
  return Math.max(0, ((2 * strip) / Math.PI) * Math.log((0.893 * strip) / gap));
}

/** A leak along the frame, spread over the ring between the cone and the frame's outline. */
function slitLeak(installation: Installation, leak: SlitLeak, density: number, swing: SwingAt): Patch {
  // of two speakers each leaks so
  const places = [middleOf(installation.mount), ...(installation.second ? [installation.second.at] : [])];
  const rings = places.map(([x, y]) => frameRing(installation, [x, y]));
  const areas = rings.flatMap((ring) => ring.areas);
  const round = rings.reduce((sum, ring) => sum + ring.round, 0);
  const slit = { ...leak, length: places.length * leak.length };
  return {
    areas,
    sheet: SHEETS.mount,
    admittance: (k, damping, area) => {
      const { re, im } = slitInertance(slit, swing(k, damping), density);
      // the strip is crossed by the whole ring, the slit may be but a part of it
      const more = slitEnds(area / round, leak.gap) * (round / slit.length);
      return admittanceOf({ re: area * re + more, im: area * im });
    }
  };
}

/** The ring round the cone as four rectangles, and its length along the middle. */
export function frameRing(
  { speaker, mount, turn }: Installation,
  [x, y]: readonly [Metres, Metres]
): { areas: PatchArea[]; round: Metres } {
  const [frame, cone] = [turned(speaker.frame, turn), turned(speaker.cone, turn)];
  const edges = (length: Metres, width: Metres, offset: readonly [Metres, Metres]) => ({
    a: Math.min(outlineLength(frame) / 2, length / 2 - Math.abs(offset[0])),
    b: Math.min(outlineWidth(frame) / 2, width / 2 - Math.abs(offset[1]))
  });
  const outer =
    mount.kind === 'free'
      ? edges(Infinity, Infinity, [0, 0])
      : mount.kind === 'plate'
        ? edges(outlineLength(mount), outlineWidth(mount), [x, y])
        : edges(mount.length, mount.width, [x, y]);
  const a = Math.min(outlineLength(cone) / 2, outer.a * (1 - RING));
  const b = Math.min(outlineWidth(cone) / 2, outer.b * (1 - RING));
  const rectangle = (left: Metres, low: Metres, right: Metres, high: Metres): PatchArea => ({
    low: [x + left, y + low, 0],
    high: [x + right, y + high, 0]
  });
  return {
    areas: [
      rectangle(-outer.a, b, outer.a, outer.b),
      rectangle(-outer.a, -outer.b, outer.a, -b),
      rectangle(a, -b, outer.a, b),
      rectangle(-outer.a, -b, -a, b)
    ],
    round: 2 * (a + outer.a + b + outer.b)
  };
}

/** A hole through the middle of a box's floor, spread over a square. */
function holeLeak(
  { mount }: Installation,
  { hole, depth }: HoleLeak,
  density: number,
  swing: SwingAt
): Patch {
  if (mount.kind !== 'box') throw new RangeError('only a box has a floor');
  const shorter = Math.min(mount.length, mount.width);
  const side = Math.min(shorter, Math.max(SQUARE * shorter, hole * Math.sqrt(Math.PI / 4)));
  const [s, z] = [side / 2, -mount.depth];
  return {
    areas: [{ low: [-s, -s, z], high: [s, s, z] }],
    admittance: (k, damping, area) => {
      const { re, im } = holeInertance({ diameter: hole, depth }, swing(k, damping), density);
      const own = (area * HOLE_ENDS * hole) / ((Math.PI / 4) * hole * hole);
      const more = Math.max(0, own - 2 * SQUARE_MASS * side);
      return admittanceOf({ re: area * re + more, im: area * im });
    }
  };
}

/** The slits round a chassis, spread over strips along its edges. */
function chassisSlits(
  shell: ShellMount,
  { height, slit, ends: gap, depth }: Chassis,
  density: number,
  swing: SwingAt
): Patch[] {
  const { length, width } = shell;
  const z = height - shell.height;
  const strip = chassisStrip(shell);
  const patch = (areas: PatchArea[], gap: Metres, along: Metres): Patch => {
    const one: Slit = { gap, length: along, depth };
    return {
      areas,
      admittance: (k, damping) => {
        const { re, im } = slitInertance(one, swing(k, damping), density);
        const area: SquareMetres = along * strip;
        return admittanceOf({ re: area * re + cornerEnds(strip, gap, height), im: area * im });
      }
    };
  };
  const [x, y] = [length / 2, width / 2];
  const patches: Patch[] = [];
  if (slit > 0)
    patches.push(
      patch(
        [
          { low: [-x, y - strip, z], high: [x, y, z] },
          { low: [-x, -y, z], high: [x, strip - y, z] }
        ],
        slit,
        length
      )
    );
  if (gap > 0 && shell.ends === 'closed')
    patches.push(
      patch(
        [
          { low: [x - strip, -y, z], high: [x, y, z] },
          { low: [-x, -y, z], high: [strip - x, y, z] }
        ],
        gap,
        width
      )
    );
  return patches;
}

/** The holes of a grille, spread evenly over the lid. */
function grilleHoles(installation: Installation, grille: Grille, density: number, swing: SwingAt): Patch {
  const { low, high } = lidOf(installation);
  const { holes, diameter, thickness } = grille;
  return {
    areas: [{ low, high }],
    admittance: manyHoles({ diameter, depth: thickness }, holes, density, swing)
  };
}

/** The openings of a body, spread evenly over its two long sides. */
function bodyOpenings(
  { depth }: BoxMount,
  { length, width, height, openings }: BodyAround,
  density: number,
  swing: SwingAt
): Patch {
  const [x, y, low, high] = [length / 2, width / 2, -(depth + height) / 2, (height - depth) / 2];
  const side = (at: Metres): PatchArea => ({ low: [-x, at, low], high: [x, at, high] });
  const holes = openings / ((Math.PI / 4) * BODY_HOLE.diameter ** 2);
  return { areas: [side(-y), side(y)], admittance: manyHoles(BODY_HOLE, holes, density, swing) };
}

/**
 * Round holes spread evenly over a patch: each has its ends, the less the closer they lie (V. A. Fok's function, from memory); the air before
 * the patch as a whole is the mesh's.
 */
function manyHoles(hole: Hole, holes: number, density: number, swing: SwingAt): Patch['admittance'] {
  return (k, damping, area) => {
    const one = (Math.PI / 4) * hole.diameter ** 2;
    const open = Math.min(1, (holes * one) / area);
    const { re, im } = holeInertance(hole, swing(k, damping), density);
    const ends = (HOLE_ENDS * hole.diameter * fok(Math.sqrt(open))) / one;
    return admittanceOf({ re: (area / holes) * (re + ends), im: (area / holes) * im });
  };
}

/** What is left of a hole's ends where holes lie in a square pattern, x the root of the open share: 1 where they lie far apart, 0 at x = 1. */
function fok(x: number): number {
  return (
    1 -
    1.4092 * x +
    0.33818 * x ** 3 +
    0.06793 * x ** 5 -
    0.02287 * x ** 6 +
    0.03015 * x ** 7 -
    0.01641 * x ** 8
  );
}

/** Width of the strips along a chassis's edges. */
export function chassisStrip({ length, width, chassis }: ShellMount): Metres {
  const { slit, ends: gap } = chassis!;
  return Math.max(slit, gap, Math.min(STRIP.width * width, STRIP.length * length));
}

/**
 * `slitEnds` of a slit along a wall that goes on above it, and below it by `height`: in a corner the flow has but a quarter turn to spread in, and
 * the wall mirrors slit and strip. Below a chassis that lies at the lower edge it has three quarters.
 */
function cornerEnds(strip: Metres, gap: Metres, height: Metres): Metres {
  const below = 1 / 3 + (2 / 3) * Math.min(1, height / strip);
  return slitEnds(strip, gap) * (1 + below);
}
