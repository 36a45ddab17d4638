import type { Installation } from '../../acoustics/installation.js';
import { outlineLength, outlineWidth, turned, type Outline } from '../../acoustics/outline.js';
import type { Metres } from '../../units.js';
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
      return boxParts([mount.length, mount.width, mount.height], {
        sides: true,
        ends: mount.ends === 'closed',
        floor: false
      });
    case 'box':
      return boxParts([mount.length, mount.width, mount.depth], { sides: true, ends: true, floor: true });
  }
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
