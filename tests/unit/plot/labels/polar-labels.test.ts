import { expect, it } from 'vitest';
import { boxesMeet } from '../../../../src/lib/plot/scales/box.js';
import { polarLabels } from '../../../../src/lib/plot/labels/polar-labels.js';
import { polarLayout } from '../../../../src/lib/plot/scales/polar-layout.js';

it.each([
  [300, false, undefined],
  [200, false, undefined],
  [300, true, 26],
  [520, true, 36]
] as const)(
  'nothing round a circle of %i pixels lies on anything, wherever one listens',
  (size, bare, textSize) => {
    const layout = polarLayout(size, bare, textSize);
    const { middle, radius } = layout;
    for (const [board, ends, farthest] of [
      [false, ['in front', 'behind'], 180],
      [true, ['straight up'], 90]
    ] as const)
      for (let angleDeg = -farthest; angleDeg <= farthest; angleDeg++) {
        const { you, others } = polarLabels(layout, angleDeg, bare, board);
        const all = [you, ...others];
        const named = others.map(({ text }) => text).filter((text) => !text.endsWith('°'));
        expect(named).toEqual(ends);
        if (board) expect(others.every(({ y }) => y < middle.y + layout.textSize)).toBe(true);
        all.forEach(({ text, box }, i) => {
          const at = `${text}, listener at ${angleDeg}°`;
          expect(box.left, at).toBeGreaterThanOrEqual(0);
          expect(box.right, at).toBeLessThanOrEqual(layout.width);
          expect(box.top, at).toBeGreaterThanOrEqual(0);
          expect(box.bottom, at).toBeLessThanOrEqual(layout.height);
          // The nearest point of the box lies outside of the circle: no curve reaches it.
          const dx = Math.max(box.left - middle.x, 0, middle.x - box.right);
          const dy = Math.max(box.top - middle.y, 0, middle.y - box.bottom);
          expect(Math.hypot(dx, dy), at).toBeGreaterThan(radius);
          for (const other of all.slice(i + 1))
            expect(boxesMeet(box, other.box), `${at}, ${other.text}`).toBe(false);
        });
        // Still beside the ear: next to "in front" it gives way by its width.
        const off = Math.atan2(you.x - middle.x, middle.y - you.y) * (180 / Math.PI) - angleDeg;
        expect(Math.abs(((off + 540) % 360) - 180), `${angleDeg}°`).toBeLessThan(75);
      }
  }
);
