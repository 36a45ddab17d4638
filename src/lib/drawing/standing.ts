import type { Installation } from '../acoustics/installation.js';
import type { Cut } from './cut.js';
import type { Section } from './section.js';

/** Which way a section is drawn. −1 where the mount is turned over about its length: what was down is up then, and across it the sides change places. */
export interface Turned {
  down: 1 | -1;
  right: 1 | -1;
}

/** How a section stands in a picture, and where its board lies; in millimetres, y = 0 the speaker's front, y down. */
export interface Standing extends Turned {
  /** Of the lowest part of the mount's surface, and of the board below it; null in the hand. */
  board: { lowest: number; at: number } | null;
  /** What the section takes, as it stands; without the board. */
  bounds: Section['bounds'];
}

/** Which way a section in a plane is drawn. */
export function turnedOver({ board }: Pick<Installation, 'board'>, plane: Cut['plane']): Turned {
  if (board?.facing !== 'down') return { down: 1, right: 1 };
  return { down: -1, right: plane === 'across' ? -1 : 1 };
}

/** How a section stands: in the hand with its speaker up, on the layout as it is put over the board. */
export function standingOf(
  { board, mount }: Pick<Installation, 'board' | 'mount'>,
  { cut, bounds }: Pick<Section, 'cut' | 'bounds'>
): Standing {
  const turned = turnedOver({ board }, cut.plane);
  if (!board) return { ...turned, board: null, bounds };
  // A magnet hangs below the plane of its frame or plate, which is what stands so high.
  const isFlat = mount.kind === 'plate' || mount.kind === 'free';
  // A body round it is the lowest part of its box.
  const under = turned.down < 0 ? (mount.body ? -bounds.top : 0) : bounds.bottom;
  const lowest = isFlat && turned.down > 0 ? 0 : under;
  const [left, right] = [turned.right * bounds.left, turned.right * bounds.right].sort((a, b) => a - b);
  const [top, bottom] = [turned.down * bounds.top, turned.down * bounds.bottom].sort((a, b) => a - b);
  return {
    ...turned,
    board: { lowest, at: lowest + 1000 * board.above },
    bounds: { left, right, top, bottom }
  };
}
