import type { Installation } from '../../acoustics/installation.js';
import { outlineLength, outlineWidth, turned, type Outline } from '../../acoustics/outline.js';
import type { Hertz, Metres, MetresPerSecond } from '../../units.js';
import type { Accuracy } from './accuracy.js';
import { boxMesh, type Walls } from './box-mesh.js';
import { ellipseMesh } from './ellipse-mesh.js';
import type { Piston } from './piston.js';
import type { TriangleMesh } from './triangle-mesh.js';

export interface MountMesh {
  mesh: TriangleMesh;
  piston: Piston;
  /** Up to where the mesh follows the wavelength. */
  highest: Hertz;
}

/** Largest ratio of the spacings along two sides. */
const STRETCH = 6;
/** A mount that cannot be meshed to this frequency within the budget is refused. */
const LOWEST = 200;

/** A rigid surface without thickness: its outline or its sides, and the walls that hang from the roof. */
type Form =
  | { ellipse: true; sides: readonly [Metres, Metres] }
  | { ellipse: false; sides: readonly [Metres, Metres, Metres]; walls: Walls };

/**
 * The quarter mesh of a mount and its cone: free air is a plate of the outline of the frame; a shell is folded from roof,
 * sides and, where closed, ends; a box has a floor too. Inside sizes, walls without thickness. The spacing is at most
 * c/(perWave·highest), and a side has at least as many cells as `accuracy` says. A mount too large for the budget is meshed
 * coarser, and `highest` falls in proportion.
 *
 * @param installation one that `checkInstallation` accepts
 * @throws RangeError where even a mesh to 200 Hz would pass the budget
 */
export function mountMesh(installation: Installation, c: MetresPerSecond, accuracy: Accuracy): MountMesh {
  const form = formOf(installation);
  const piston = {
    outline: turned(installation.speaker.cone, installation.turn),
    middle: middleOf(installation)
  };
  for (let highest: Hertz = accuracy.highest; highest >= LOWEST; highest *= 0.9) {
    const wave = c / (accuracy.perWave * highest);
    if (estimate(form, spacings(form, wave, accuracy)) > accuracy.budget) continue;
    return { mesh: meshOf(form, spacings(form, wave, accuracy)), piston, highest };
  }
  throw new RangeError(
    'this mount is too large or too slender for the wave solution: make its longest side shorter or its shortest side longer'
  );
}

function formOf({ speaker, mount, turn }: Installation): Form {
  switch (mount.kind) {
    case 'free':
      return flat(turned(speaker.frame, turn));
    case 'plate':
      return flat(mount);
    case 'shell': {
      const ends = mount.ends === 'closed';
      return {
        ellipse: false,
        sides: [mount.length, mount.width, mount.height],
        walls: { sides: true, ends, floor: false }
      };
    }
    case 'box':
      return {
        ellipse: false,
        sides: [mount.length, mount.width, mount.depth],
        walls: { sides: true, ends: true, floor: true }
      };
  }
}

function flat(outline: Outline): Form {
  const [length, width] = [outlineLength(outline), outlineWidth(outline)];
  if (outline.shape !== 'rectangle') return { ellipse: true, sides: [length, width] };
  return { ellipse: false, sides: [length, width, 0], walls: { sides: false, ends: false, floor: false } };
}

function middleOf({ mount }: Installation): readonly [Metres, Metres] {
  if (mount.kind === 'plate') return mount.offset;
  return mount.kind === 'shell' ? [mount.offset, 0] : [0, 0];
}

/** Spacing along each side. */
function spacings(form: Form, wave: Metres, { cells }: Accuracy): number[] {
  const folded = form.ellipse ? [] : [form.walls.ends, form.walls.sides, form.walls.floor];
  // a wall ends freely at its lower edge only, so that a bit less than half does
  const least = (d: number) => (folded[d] ? cells.folded : d === 2 ? 0.4 * cells.free : cells.free);
  const own = form.sides.map((side, d) => Math.min(wave, side / least(d)));
  const finest = Math.min(...own.filter((h) => h > 0));
  return own.map((h) => Math.min(h, STRETCH * finest));
}

function meshOf(form: Form, h: number[]): TriangleMesh {
  if (form.ellipse) return ellipseMesh(form.sides[0] / 2, form.sides[1] / 2, Math.min(...h));
  return boxMesh(form.sides, form.walls, [h[0], h[1], h[2]]);
}

/** About the number of nodes of the quarter. */
function estimate(form: Form, h: number[]): number {
  const grown = 1.28;
  if (form.ellipse) {
    const [a, b] = [form.sides[0] / 2, form.sides[1] / 2];
    return ((Math.PI / 4) * Math.max(a, b) ** 2 * grown) / Math.min(...h) ** 2;
  }
  const { walls } = form;
  const count = (d: number, free: boolean, share: number) =>
    (share * form.sides[d] * (free ? grown : 1)) / h[d] + 1;
  const x = count(0, !walls.ends, 0.5);
  const y = count(1, !walls.sides, 0.5);
  const z = form.sides[2] > 0 ? count(2, !walls.floor, 1) : 0;
  return x * y * (walls.floor ? 2 : 1) + (walls.sides ? x * z : 0) + (walls.ends ? y * z : 0);
}
