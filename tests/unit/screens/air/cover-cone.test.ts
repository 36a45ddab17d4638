import { expect, test } from 'vitest';
import { coverCone } from '../../../../src/lib/screens/air/cover-cone.js';
import { straightCut } from '../../../../src/lib/drawing/cut.js';
import { sectionOf } from '../../../../src/lib/drawing/section.js';
import { sectionGrid } from '../../../../src/lib/screens/air/section-grid.js';
import { columnAt, rowAt } from '../../../../src/lib/waves/field/section-grid.js';
import { DEMO, ovalIn } from '../../../helpers/demo-installations.js';

const OFF_CENTRE = ovalIn({
  kind: 'shell',
  length: 0.152,
  width: 0.033,
  height: 0.04,
  ends: 'open',
  offset: 0.03
});

for (const [name, installation] of Object.entries({ ...DEMO, 'cone off the centre': OFF_CENTRE }))
  for (const plane of ['length', 'width'] as const)
    test(`${name}, ${plane}: as far as shading reaches in front of the cone it is the front’s, elsewhere nothing changes`, () => {
      // Front +1, back −1, the mean of both on the plane: the worst that shading can meet.
      const grid = sectionGrid(installation, plane);
      const section = sectionOf(installation, straightCut(plane));
      const { middle, coneWidth } = section.speaker;
      const sides = Float32Array.from({ length: grid.columns * grid.rows }, (_, p) =>
        Math.sign(Math.round(1e6 * rowAt(grid, Math.floor(p / grid.columns))))
      );
      const image = { re: sides.slice(), im: sides.map((x) => 2 * x) };
      coverCone(image, grid, section);
      const height = (grid.top - grid.bottom) / grid.rows;
      const cone = (column: number) => Math.abs(1000 * columnAt(grid, column) - middle) <= coneWidth / 2;
      let changed = 0;
      const wrong: number[] = [];
      for (let p = 0; p < sides.length; p++) {
        const [row, column] = [Math.floor(p / grid.columns), p % grid.columns];
        const y = rowAt(grid, row);
        // Rows whose shading reaches above the plane lie less than one row below it.
        const covered = cone(column) && y > -height;
        const right =
          Object.is(image.re[p], covered ? 1 : sides[p]) && Object.is(image.im[p], 2 * image.re[p]);
        if (!right) wrong.push(p);
        if (image.re[p] !== sides[p]) changed++;
      }
      expect(wrong).toEqual([]);
      const columns = Array.from({ length: grid.columns }, (_, column) => column).filter(cone).length;
      expect(changed).toBeGreaterThanOrEqual(columns);
      expect(columns).toBeGreaterThan(5);
    });
