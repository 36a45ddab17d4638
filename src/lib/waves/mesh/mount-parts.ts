import type { Installation } from '../../acoustics/installation.js';
import { firstAt } from '../../acoustics/mounts/second.js';
import { outlineLength, outlineWidth, turned, type Outline } from '../../acoustics/outline.js';
import type { BodyAround, BoxMount, Mount, ShellMount } from '../../acoustics/mounts/mount.js';
import type { Chamber } from './chamber.js';
import type { CubicMetres, Metres } from '../../units.js';
import type { Panel, SurfacePart } from './surface-part.js';
import type { Vector } from './symmetry.js';

/** Which walls stand below the roof or front, which is always there. */
export interface Walls {
  /** The two walls y = ±width/2. */
  sides: boolean;
  /** The two walls x = ±length/2. */
  ends: boolean;
  /** The wall opposite the front. */
  floor: boolean;
}

/** The sheets of a surface: the mount itself, and what meets it or lies round it. */
export const SHEETS = { mount: 0, skirt: 1, grille: 2, body: 3 };
/** A grille stands at least so far before its cone in the mesh: its air is set right, and nearer sheets would not be resolved. */
const LEAST_CAVITY: Metres = 0.001;

/**
 * The surface of a mount: free air is a plate of the outline of the frame; a shell is folded from roof, sides and, where
 * closed, ends; a box has a floor too. Inside sizes, walls without thickness; plate, roof or front lie in z = 0, the rest below. A
 * grille is a lid over the cone, a body a box round the box.
 */
export function mountParts(installation: Installation): SurfacePart[] {
  const { mount } = installation;
  const parts = bareParts(installation);
  if (mount.grille) parts.push(...grilleParts(installation));
  if (mount.kind === 'box' && mount.body) parts.push(...bodyParts(mount, mount.body));
  return parts;
}

function bareParts({ speaker, mount, turn }: Installation): SurfacePart[] {
  switch (mount.kind) {
    case 'free':
      return flat(turned(speaker.frame, turn), mount.grille && turned(speaker.cone, turn));
    case 'plate':
      return flat(mount, mount.grille && turned(speaker.cone, turn), mount.offset);
    case 'shell':
      return shellParts(mount);
    case 'box':
      return boxParts([mount.length, mount.width, mount.depth], { sides: true, ends: true, floor: true });
  }
}

/** The lid over a cone: its bounding rectangle, and how far before it the lid lies in the mesh. */
export function lidOf({ speaker, mount, turn }: Installation): { low: Vector; high: Vector } {
  const cone = turned(speaker.cone, turn);
  const [x, y] = middleOf(mount);
  const [a, b] = [outlineLength(cone) / 2, outlineWidth(cone) / 2];
  const z = Math.max(LEAST_CAVITY, mount.grille!.cavity);
  return { low: [x - a, y - b, z], high: [x + a, y + b, z] };
}

/** A lid with walls down to the cone's plane, closed by what lies there. */
function grilleParts(installation: Installation): Panel[] {
  const { low, high } = lidOf(installation);
  const sides: Vector = [high[0] - low[0], high[1] - low[1], high[2]];
  const middle: Vector = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, high[2]];
  return boxParts(sides, { sides: true, ends: true, floor: true }).map((panel, i, all) => ({
    ...movedBy(panel, middle),
    sheet: SHEETS.grille,
    rim: i === all.length - 1
  }));
}

/** A body with its box in the middle. */
function bodyParts({ depth }: BoxMount, { length, width, height }: BodyAround): Panel[] {
  return boxParts([length, width, height], { sides: true, ends: true, floor: true }).map((panel) => ({
    ...movedBy(panel, [0, 0, (height - depth) / 2]),
    sheet: SHEETS.body
  }));
}

function movedBy(panel: Panel, by: Vector): Panel {
  const moved = ([x, y, z]: Vector): Vector => [x + by[0], y + by[1], z + by[2]];
  const [low, high] = [moved(panel.low), moved(panel.high)];
  // what lies in z = 0 does so exactly
  const onGround = Math.abs(low[2]) < 1e-12 && Math.abs(high[2]) < 1e-12;
  return onGround
    ? { ...panel, low: [low[0], low[1], 0], high: [high[0], high[1], 0] }
    : { ...panel, low: [low[0], low[1], Math.abs(low[2]) < 1e-12 ? 0 : low[2]], high };
}

/** A shell: roof and walls, and the chassis across it. */
function shellParts({ length, width, height, ends, chassis }: ShellMount): Panel[] {
  const walls = { sides: true, ends: ends === 'closed', floor: false };
  if (!chassis) return boxParts([length, width, height], walls);
  const above = boxParts([length, width, height - chassis.height], { ...walls, floor: true });
  if (chassis.height === 0) return above;
  // below it the walls go on, as a sheet of their own
  const skirt = boxParts([length, width, height], walls)
    .slice(1)
    .map((panel): Panel => {
      const [x, y] = panel.high;
      return { ...panel, high: [x, y, chassis.height - height], sheet: SHEETS.skirt, laps: true };
    });
  return [...above, ...skirt];
}

/** The rooms of a mount that are closed but for openings and hold more or less air than they have in the mesh. */
export function mountChambers(installation: Installation): Chamber[] {
  const { speaker, mount, second } = installation;
  const bodies = (second ? 2 : 1) * speaker.bodyVolume;
  const chambers: Chamber[] = [];
  if (mount.kind === 'box' && mount.leak)
    chambers.push(chamberBehind([mount.length, mount.width, mount.depth], 0, bodies));
  if (mount.kind === 'shell' && mount.chassis && mount.ends === 'closed') {
    const { chassis, length, width, height } = mount;
    chambers.push(chamberBehind([length, width, height - chassis.height], chassis.fill, bodies));
  }
  if (mount.grille) chambers.push(chamberBefore(installation, mount.grille.cavity));
  return chambers;
}

function chamberBehind(sides: Vector, fill: number, body: CubicMetres): Chamber {
  const [length, width, height] = sides;
  return {
    sheet: SHEETS.mount,
    share: 1 - fill - body / (length * width * height),
    low: [-length / 2, -width / 2, -height],
    high: [length / 2, width / 2, 0],
    longest: Math.max(...sides),
    behind: true
  };
}

/** The air between cone and grille: the cone's bounding rectangle, within the frame, times the cavity. */
function chamberBefore(installation: Installation, cavity: Metres): Chamber {
  const { low, high } = lidOf(installation);
  const ground: Vector = [low[0], low[1], 0];
  return {
    sheet: SHEETS.grille,
    shared: { low: ground, high: [high[0], high[1], 0] },
    share: cavity / high[2],
    low: ground,
    high,
    behind: false
  };
}

/** Where the middle of the first cone lies. */
export function middleOf(mount: Mount): Vector {
  return [...firstAt(mount), 0];
}

/**
 * A plate. Under a grille a round or elliptical one is taken for a rectangle of its area and proportions, at least as large as the cone's
 * bounding rectangle: lid and plate share their grid.
 */
function flat(outline: Outline, lid?: Outline, [x, y]: readonly [Metres, Metres] = [0, 0]): SurfacePart[] {
  const [length, width] = [outlineLength(outline), outlineWidth(outline)];
  const plain = { sides: false, ends: false, floor: false };
  if (outline.shape === 'rectangle') return boxParts([length, width, 0], plain);
  if (!lid) return [{ shape: 'ellipse', semiAxes: [length / 2, width / 2] }];
  const side = Math.sqrt(Math.PI / 4);
  return boxParts(
    [
      Math.max(side * length, outlineLength(lid) + 2 * Math.abs(x)),
      Math.max(side * width, outlineWidth(lid) + 2 * Math.abs(y)),
      0
    ],
    plain
  );
}

/** A box or a folded plate: the front or roof in z = 0, walls going down from it, perhaps a floor; all fronts look outward. */
export function boxParts(
  [length, width, depth]: readonly [Metres, Metres, Metres],
  { sides, ends, floor }: Walls
): Panel[] {
  const [x, y, z] = [length / 2, width / 2, -depth];
  const panel = (low: Vector, high: Vector, facing: 1 | -1): Panel => ({ shape: 'panel', low, high, facing });
  const parts = [panel([-x, -y, 0], [x, y, 0], 1)];
  if (sides) parts.push(panel([-x, y, z], [x, y, 0], 1), panel([-x, -y, z], [x, -y, 0], -1));
  if (ends) parts.push(panel([x, -y, z], [x, y, 0], 1), panel([-x, -y, z], [-x, y, 0], -1));
  if (floor) parts.push(panel([-x, -y, z], [x, y, z], -1));
  return parts;
}
