import type { Installation } from '../../../acoustics/installation.js';
import type { SectionGrid } from '../../../waves/field/section-grid.js';
import { straightCut } from '../../../drawing/cut.js';
import { sectionOf, type Section } from '../../../drawing/section.js';
import { standingOf, type Standing } from '../../../drawing/standing.js';

/** A mount as it stands in a picture of the air, in pixels. */
export interface StandsIn {
  section: Section;
  standing: Standing;
  /** Where the speaker's front lies, in the middle of the mount. */
  x: number;
  y: number;
  /** Where the board lies; null in the hand. */
  board: number | null;
}

/** Where a mount stands in a picture of the air: what is solved looks up, what is turned over is drawn so. `scale`: pixels a millimetre. */
export function standsIn(installation: Installation, grid: SectionGrid, scale: number): StandsIn {
  const section = { ...sectionOf(installation, straightCut(grid.plane)), string: null };
  const standing = standingOf(installation, section);
  const y = 1000 * scale * (standing.down > 0 ? grid.top : -grid.bottom);
  const { board } = standing;
  return { section, standing, x: -1000 * scale * grid.left, y, board: board && y + board.at * scale };
}
