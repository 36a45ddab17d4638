import type { CubicMetres } from '../../units.js';
import type { Installation } from '../installation.js';

export interface BoxVolumes {
  /** Length × width × depth inside. */
  inside: CubicMetres;
  /** What the body of the speaker takes of it, or those of both. */
  body: CubicMetres;
  /** What is left for the air: may be 0 or less if the body fills the box. */
  net: CubicMetres;
}

/**
 * The volumes of a closed box.
 *
 * @throws RangeError if the mount is not a box
 */
export function boxVolumes({ speaker, mount, second }: Installation): BoxVolumes {
  if (mount.kind !== 'box')
    throw new RangeError(`only a box has a volume, got a mount of kind ${mount.kind}`);
  const inside = mount.length * mount.width * mount.depth;
  const body = (second ? 2 : 1) * speaker.bodyVolume;
  return { inside, body, net: inside - body };
}

/**
 * The air that acts as a spring on each cone: two that push on the same air together have half of it each, two that push against each
 * other only move it to and fro.
 *
 * @returns m³; Infinity for two that are reversed
 * @throws RangeError if the mount is not a box
 */
export function airForEach(installation: Installation): CubicMetres {
  const { net } = boxVolumes(installation);
  const { second } = installation;
  if (!second) return net;
  return second.reversed ? Infinity : net / 2;
}
