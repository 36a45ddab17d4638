import type { FieldImage } from '../../waves/field/field-on-grid.js';
import { columnAt, rowAt, type SectionGrid } from '../../waves/field/section-grid.js';
import type { Section } from '../../drawing/section.js';

/**
 * The cone is solved as if it were flat, and drawn hollow. Since a picture is shaded from one row of pixels to the next, a
 * sliver in front of the cone would show what its back does. So the row just below the front of the cone, which lies in
 * the hollow, gets the values of the row above it.
 *
 * @param image is changed
 */
export function coverCone(image: FieldImage, grid: SectionGrid, { speaker }: Section): void {
  const height = (grid.top - grid.bottom) / grid.rows;
  // The lowest row above the plane; on the plane itself stands the mean of both sides.
  const front = Math.ceil(grid.top / height - 0.5 - 1e-6) - 1;
  for (let column = 0; column < grid.columns; column++) {
    if (Math.abs(1000 * columnAt(grid, column) - speaker.middle) > speaker.coneWidth / 2) continue;
    const from = front * grid.columns + column;
    for (let row = front + 1; row < grid.rows && rowAt(grid, row) > -height; row++) {
      const to = row * grid.columns + column;
      [image.re[to], image.im[to]] = [image.re[from], image.im[from]];
    }
  }
}
