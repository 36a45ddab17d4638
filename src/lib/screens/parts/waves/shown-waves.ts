import type { AirAround } from '../../../bench/air/air-around.svelte.js';
import type { Stand } from '../../../evaluation/stand.js';

/** What a picture of the air shows: of which mount, and whether it is a tone. */
export interface ShownWaves {
  of: Pick<Stand, 'setup'> | null;
  isTone: boolean;
}

/** What the picture that is to be seen is of; a mount that has changed since is no longer on the shelf. */
export function shownWaves(
  picture: NonNullable<AirAround['picture']>,
  stands: readonly Pick<Stand, 'installation' | 'setup'>[]
): ShownWaves {
  const { installation } = 'tone' in picture ? picture.tone : picture.puff;
  return {
    of: stands.find((stand) => stand.installation === installation) ?? null,
    isTone: 'tone' in picture
  };
}

/** What a mount is called that is no longer on the shelf as it was. */
export const BEFORE = 'the mount before';
