import type { Installation } from '../../acoustics/installation.js';
import type { Listener } from '../../acoustics/listener.js';
import type { Metres } from '../../units.js';
import type { SectionGrid } from '../../waves/field/section-grid.js';
import { straightCut } from '../../drawing/cut.js';
import { sectionOf, type Section } from '../../drawing/section.js';
import { standingOf } from '../../drawing/standing.js';

/** Width of the picture at least, in millimetres, and of the widest mount so many times its own. */
const LEAST_WIDTH = 340;
const TIMES = 1.7;
const COLUMNS = 128;
const ROWS = 80;

/** Of the air over a board: what lies below the board, a share of the picture's height, and above the mount at least, in millimetres. */
const BELOW_BOARD = 0.06;
const OVER = 60;

/**
 * The air around a mount: so much that a wave is seen to leave it, the mount in the middle; over a board, the board near the lower edge
 * of what is drawn. Up is where the cone looks, as it is solved.
 *
 * @param like as much of the air as in this picture
 */
export function sectionGrid(
  installation: Installation,
  plane: Listener['plane'],
  like?: SectionGrid
): SectionGrid {
  const section = sectionOf(installation, straightCut(plane));
  const standing = standingOf(installation, section);
  if (!standing.board) return like ?? around(plane, widthAround(section.bounds), middleOf(section.bounds));
  const needed = ((standing.board.at - standing.bounds.top + OVER) / (1 - BELOW_BOARD)) * (COLUMNS / ROWS);
  const width = like ? like.right - like.left : Math.max(needed / 1000, widthAround(section.bounds));
  const below = (0.5 - BELOW_BOARD) * heightOf(width);
  return around(plane, width, standing.down * (below - standing.board.at / 1000));
}

function widthAround({ left, right }: Section['bounds']): Metres {
  return Math.max(LEAST_WIDTH, TIMES * 2 * Math.max(-left, right)) / 1000;
}

function heightOf(width: Metres): Metres {
  return (width * ROWS) / COLUMNS;
}

function middleOf({ top, bottom }: Section['bounds']): Metres {
  return -(bottom - top) / 2000;
}

/** So much of the air, its middle so high. */
function around(plane: Listener['plane'], width: Metres, middle: Metres): SectionGrid {
  const height = heightOf(width);
  return {
    plane,
    left: -width / 2,
    right: width / 2,
    bottom: middle - height / 2,
    top: middle + height / 2,
    columns: COLUMNS,
    rows: ROWS
  };
}
