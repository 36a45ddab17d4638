import type { Installation } from '../acoustics/installation.js';
import { firstAt } from '../acoustics/mounts/second.js';
import { stringPath } from '../acoustics/mounts/string-path.js';

/** The plane of a section: which extents it shows, the way it runs seen from above, and the string's side. */
export interface Cut {
  plane: 'across' | 'along';
  side: 1 | -1;
  /** Unit vector of the cut seen from above: x along the mount, y across it. */
  direction: readonly [number, number];
}

/** The plane through the cone along the mount, or across it. */
export function straightCut(plane: 'length' | 'width'): Cut {
  return plane === 'length'
    ? { plane: 'along', side: 1, direction: [1, 0] }
    : { plane: 'across', side: 1, direction: [0, 1] };
}

/** The plane that holds the shortest string. A box, which has none, is cut across, or along where its speakers lie so. */
export function cutOf(installation: Installation): Cut {
  const string = stringPath(installation);
  if (!string) return straightCut(liesAlong(installation) ? 'length' : 'width');
  const [dx, dy] = string.direction;
  const along = Math.abs(dx) > Math.abs(dy);
  const side = (along ? dx : dy) < 0 ? -1 : 1;
  return { plane: along ? 'along' : 'across', side, direction: [dx * side, dy * side] };
}

/** Whether the second speaker lies along from the first, or the only one along from the middle, rather than across. */
function liesAlong({ mount, second }: Installation): boolean {
  const [x, y] = firstAt(mount);
  const [along, across] = second ? [second.at[0] - x, second.at[1] - y] : [x, y];
  return Math.abs(along) > Math.abs(across);
}
