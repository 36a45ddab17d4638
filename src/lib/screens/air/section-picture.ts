import type { SectionPicture } from '../../bench/air/section-picture.js';
import { straightCut } from '../../drawing/cut.js';
import { sectionOf } from '../../drawing/section.js';
import { coverCone } from './cover-cone.js';
import { sectionGrid } from './section-grid.js';

/** Pictures the air so that the drawn section lies over it. */
export const sectionPicture: SectionPicture = {
  grid: sectionGrid,
  coverCone(images, grid, installation) {
    const section = sectionOf(installation, straightCut(grid.plane));
    for (const image of images) coverCone(image, grid, section);
  }
};
