import type { Installation } from '../acoustics/installation.js';
import { type Section, sectionOf } from './section.js';
import { standingOf } from './standing.js';

/** What a mount takes as it stands, down to its board. */
export function takenBy(installation: Installation): Section['bounds'] {
  const { bounds, board } = standingOf(installation, sectionOf(installation));
  return board ? { ...bounds, bottom: board.at } : bounds;
}
