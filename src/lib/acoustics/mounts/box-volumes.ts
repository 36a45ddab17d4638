import type { CubicMetres } from '../../units.js';
import type { Installation } from '../installation.js';

export interface BoxVolumes {
  /** Length × width × depth inside. */
  inside: CubicMetres;
  /** What the speaker's body takes of it. */
  body: CubicMetres;
  /** What is left for the air: may be 0 or less if the body fills the box. */
  net: CubicMetres;
}

/**
 * The volumes of a closed box.
 *
 * @throws RangeError if the mount is not a box
 */
export function boxVolumes({ speaker, mount }: Installation): BoxVolumes {
  if (mount.kind !== 'box')
    throw new RangeError(`only a box has a volume, got a mount of kind ${mount.kind}`);
  const inside = mount.length * mount.width * mount.depth;
  return { inside, body: speaker.bodyVolume, net: inside - speaker.bodyVolume };
}
