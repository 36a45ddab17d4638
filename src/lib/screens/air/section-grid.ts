import type { Installation } from '../../acoustics/installation.js';
import type { Listener } from '../../acoustics/listener.js';
import type { SectionGrid } from '../../waves/field/section-grid.js';
import { straightCut } from '../../drawing/cut.js';
import { sectionOf } from '../../drawing/section.js';

/** Width of the picture at least, in millimetres, and of the widest mount so many times its own. */
const LEAST_WIDTH = 340;
const TIMES = 1.7;
const COLUMNS = 128;
const ROWS = 80;

/** The air around a mount: so much that a wave is seen to leave it, the mount in the middle. */
export function sectionGrid(installation: Installation, plane: Listener['plane']): SectionGrid {
  const { bounds } = sectionOf(installation, straightCut(plane));
  const width = Math.max(LEAST_WIDTH, TIMES * 2 * Math.max(-bounds.left, bounds.right)) / 1000;
  const height = (width * ROWS) / COLUMNS;
  const middle = -(bounds.bottom - bounds.top) / 2000;
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
