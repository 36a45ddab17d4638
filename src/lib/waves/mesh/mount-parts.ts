import type { Installation } from '../../acoustics/installation.js';
import { firstAt } from '../../acoustics/mounts/second.js';
import { outlineLength, outlineWidth, turned, type Outline } from '../../acoustics/outline.js';
import type { Mount, ShellMount } from '../../acoustics/mounts/mount.js';
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

/**
 * The surface of a mount: free air is a plate of the outline of the frame; a shell is folded from roof, sides and, where
 * closed, ends; a box has a floor too. Inside sizes, walls without thickness; plate, roof or front lie in z = 0, the rest below.
 */
export function mountParts({ speaker, mount, turn }: Installation): SurfacePart[] {
  switch (mount.kind) {
    case 'free':
      return flat(turned(speaker.frame, turn));
    case 'plate':
      return flat(mount);
    case 'shell':
      return shellParts(mount);
    case 'box':
      return boxParts([mount.length, mount.width, mount.depth], { sides: true, ends: true, floor: true });
  }
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
      return { ...panel, high: [x, y, chassis.height - height], sheet: 1, laps: true };
    });
  return [...above, ...skirt];
}

/** The rooms behind a cone that are closed but for openings. */
export function mountChambers({ speaker, mount, second }: Installation): Chamber[] {
  const bodies = (second ? 2 : 1) * speaker.bodyVolume;
  if (mount.kind === 'box' && mount.leak)
    return [chamber([mount.length, mount.width, mount.depth], 0, bodies)];
  if (mount.kind === 'shell' && mount.chassis && mount.ends === 'closed') {
    const { chassis, length, width, height } = mount;
    return [chamber([length, width, height - chassis.height], chassis.fill, bodies)];
  }
  return [];
}

function chamber(sides: Vector, fill: number, body: CubicMetres): Chamber {
  const [length, width, height] = sides;
  return {
    sheet: 0,
    share: 1 - fill - body / (length * width * height),
    low: [-length / 2, -width / 2, -height],
    high: [length / 2, width / 2, 0]
  };
}

/** Where the middle of the first cone lies. */
export function middleOf(mount: Mount): Vector {
  return [...firstAt(mount), 0];
}

function flat(outline: Outline): SurfacePart[] {
  const [length, width] = [outlineLength(outline), outlineWidth(outline)];
  return outline.shape === 'rectangle'
    ? boxParts([length, width, 0], { sides: false, ends: false, floor: false })
    : [{ shape: 'ellipse', semiAxes: [length / 2, width / 2] }];
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
