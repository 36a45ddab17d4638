import type { Metres } from '../../units.js';
import type { Speaker } from '../speaker/speaker.js';
import type { Mount, MountKind } from './mount.js';

/**
 * The board of a layout under a mount: endless, level and hard. `facing` is where the cone looks; `down` is the mount turned over
 * about its length.
 */
export interface Board {
  /** How high the lowest part of the mount's surface stands over it: frame or plate, a shell's lower edge or roof, a box's lower face. */
  above: Metres;
  facing: 'up' | 'down';
}

/** Usual heights in HO with the cone up: a frame or plate half-way up a body, the lower edge of a body, a box in it (common practice). */
const USUAL_UP: Readonly<Record<MountKind, Metres>> = { free: 0.035, plate: 0.035, shell: 0.014, box: 0.02 };
/** With the cone down: the floor of a tender or a body. */
const USUAL_DOWN: Metres = 0.014;
/** What the usual height leaves below a magnet at least. */
const CLEAR: Metres = 0.005;

/** The height over the board of a mount of which none is told. */
export function usualAbove(speaker: Pick<Speaker, 'depth'>, mount: Mount, facing: Board['facing']): Metres {
  if (facing === 'down') return USUAL_DOWN;
  return Math.max(USUAL_UP[mount.kind], magnetBelow(speaker, mount, facing) + CLEAR);
}

/** How far the speaker's magnet reaches below the lowest part of the mount's surface; 0 where it does not. */
export function magnetBelow(
  { depth }: Pick<Speaker, 'depth'>,
  mount: Mount,
  facing: Board['facing']
): Metres {
  if (facing === 'down' || mount.kind === 'box') return 0;
  return Math.max(0, mount.kind === 'shell' ? depth - mount.height : depth);
}
