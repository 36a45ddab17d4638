import { describe, expect, it } from 'vitest';
import { boxesMeet, discMeetsBox } from '../../../../src/lib/plot/scales/box.js';
import { discPlaces } from '../../../../src/lib/plot/labels/disc-places.js';
import { markerLabels } from '../../../../src/lib/plot/labels/marker-labels.js';
import { pictureLayout } from '../../../../src/lib/plot/scales/picture-layout.js';
import { random } from '../random.js';
import { randomFamily } from '../random-family.js';

describe.each([pictureLayout(1340, 320, false), pictureLayout(366, 200, false)])(
  'markerLabels in a picture $width pixels wide',
  (layout) => {
    const { area, discRadius, textSize } = layout;
    const zero = { left: area.left + 8, right: area.left + 120, top: area.top + 40, bottom: area.top + 56 };

    it('never collides with discs, boxes, edges or another text, for any of 200 random families', () => {
      let texts = 0;
      for (let seed = 1; seed <= 200; seed++) {
        const draw = random(seed);
        const curves = randomFamily(seed, layout);
        const discs = [...discPlaces(curves, area, { radius: discRadius }).values()];
        const lines = ['half a wave', 'the shell rings here', 'half a wave'].map((text) => ({
          text,
          x: area.left + draw() * (area.right - area.left)
        }));
        const labels = markerLabels(lines, area, textSize, {
          discs,
          discRadius,
          boxes: [zero],
          runs: curves.flatMap((curve) => curve.runs)
        }).flatMap((label) => label ?? []);
        texts += labels.length;
        labels.forEach(({ box }, i) => {
          expect(box.left).toBeGreaterThanOrEqual(area.left);
          expect(box.right).toBeLessThanOrEqual(area.right);
          expect(box.top).toBeGreaterThanOrEqual(area.top);
          expect(box.bottom).toBeLessThanOrEqual(area.bottom);
          expect(boxesMeet(box, zero)).toBe(false);
          for (const disc of discs) expect(discMeetsBox(disc.x, disc.y, discRadius, box)).toBe(false);
          for (const other of labels.slice(0, i)) expect(boxesMeet(box, other.box)).toBe(false);
        });
      }
      expect(texts).toBeGreaterThan(0.95 * 600);
    });

    it('leaves the line without text where nothing is clear', () => {
      const boxes = [area];
      const lines = [{ x: area.left + 50, text: 'half a wave' }];
      expect(markerLabels(lines, area, textSize, { discs: [], discRadius, boxes, runs: [] })).toEqual([null]);
    });

    it('turns to the left of a line near the right edge', () => {
      const lines = [{ x: area.right - 20, text: 'half a wave' }];
      const [label] = markerLabels(lines, area, textSize, { discs: [], discRadius, boxes: [], runs: [] });
      expect(label?.anchor).toBe('end');
    });
  }
);

it('the words of a range stand on its left, and give way to those of lines', () => {
  const layout = pictureLayout(1340, 320, false);
  const { area, textSize } = layout;
  const free = { discs: [], discRadius: 13, boxes: [], runs: [] };
  const range = { text: '← below', x: area.left + 300, kind: 'range-below' as const };
  const line = { text: 'this line stands not far to the right of it', x: area.left + 350 };
  const wall = [
    { x: line.x + 20, y: area.top },
    { x: line.x + 20, y: area.bottom }
  ];
  const [alone] = markerLabels([range], area, textSize, free);
  expect([alone!.anchor, alone!.box.right]).toEqual(['end', range.x - 6]);
  // To the right there is a curve; to the left only the range, which has no line to be crossed.
  const [words, below] = markerLabels([line, range], area, textSize, { ...free, runs: [wall] });
  expect(words!.anchor).toBe('end');
  expect(words!.box.left).toBeLessThan(range.x);
  expect(below!.box.top).toBeGreaterThan(words!.box.bottom - 1);
});
