import type { Addition } from '../../../acoustics/mounts/usual-openings.js';
import type { Openings } from '../../../acoustics/mounts/mount.js';

/** What can be added to a mount, as it is offered: its name, and what it is. */
export const ADDITION_WORDS: Readonly<Record<Addition, { name: string; words: string }>> = {
  chassis: { name: 'a chassis', words: 'a floor in the shell, with slits round it and mechanism on it' },
  gap: { name: 'a gap', words: 'round the speaker’s frame: 0.1 mm is a sheet of paper that was not glued' },
  hole: { name: 'a hole', words: 'through the box, for a wire or a screw' },
  grille: { name: 'a grille', words: 'holes over the cone: a fan opening, a perforated roof' },
  body: { name: 'a body round it', words: 'the box stands in a tender or a coach with openings' }
};

/** What it is called where it is there. */
export const OPENING_TITLES: Readonly<Record<keyof Openings, string>> = {
  leak: 'leak',
  chassis: 'chassis',
  grille: 'grille',
  body: 'body round the box'
};
