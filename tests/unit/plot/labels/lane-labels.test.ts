import { describe, expect, it } from 'vitest';
import { boxesMeet } from '../../../../src/lib/plot/scales/box.js';
import { laneLabels, type LaneLine } from '../../../../src/lib/plot/labels/lane-labels.js';
import { leftOut } from '../../../../src/lib/plot/labels/left-out.js';
import { pictureLayout } from '../../../../src/lib/plot/scales/picture-layout.js';
import { random } from '../random.js';

const KINDS = ['remark', 'half-wave', 'ring', 'range-below', 'range-above', undefined] as const;
const TEXTS = ['half a wave late: the back adds', 'rings here', '← front and back cancel', 'A4'];

describe.each([
  // With the least number that must find room, of 885 that ask for it; a little fewer than do today.
  { layout: pictureLayout(1340, 320, false, undefined, 1), least: 740 },
  { layout: pictureLayout(366, 200, false, undefined, 1), least: 505 },
  { layout: pictureLayout(620, 240, false, undefined, 2), least: 705 },
  { layout: pictureLayout(960, 400, true, 26, 3), least: 685 }
])('laneLabels in a picture $layout.width pixels wide with $layout.lanes rows', ({ layout, least }) => {
  const { area } = layout;

  it('lie on nothing: above the drawing, inside of the picture, on no other text and no other line, for 300 random sets', () => {
    let placed = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const draw = random(seed);
      const lines: LaneLine[] = Array.from({ length: 1 + Math.floor(draw() * 5) }, () => ({
        x: area.left + draw() * (area.right - area.left),
        text: TEXTS[Math.floor(draw() * TEXTS.length)],
        kind: KINDS[Math.floor(draw() * KINDS.length)]
      }));
      const labels = laneLabels(lines, layout);
      expect(labels).toHaveLength(lines.length);
      labels.forEach((label, i) => {
        if (!label) return;
        placed++;
        const { box } = label;
        expect(box.bottom).toBeLessThanOrEqual(area.top);
        expect(box.top).toBeGreaterThanOrEqual(0);
        expect(box.left).toBeGreaterThanOrEqual(0);
        expect(box.right).toBeLessThanOrEqual(layout.width);
        labels.forEach((other, j) => {
          if (i === j || !other) return;
          expect(boxesMeet(box, other.box)).toBe(false);
          const { x, kind } = lines[j];
          // A line goes up to its own text.
          const line = { left: x, right: x + 0.1, top: other.box.bottom, bottom: area.top };
          if (kind !== 'range-below' && kind !== 'range-above') expect(boxesMeet(box, line)).toBe(false);
        });
      });
    }
    expect(placed).toBeGreaterThan(least);
  });

  it('stands over its line, and on the side that it speaks of', () => {
    const x = (area.left + area.right) / 2;
    const one = (kind: LaneLine['kind']) => laneLabels([{ x, text: 'here', kind }], layout)[0]!;
    expect(one('remark')).toMatchObject({ x, anchor: 'middle' });
    expect(one('range-below').box.right).toBeLessThanOrEqual(x);
    expect(one('half-wave').box.right).toBeLessThanOrEqual(x);
    expect(one('range-above').box.left).toBeGreaterThanOrEqual(x);
  });
});

it('what has no room is told in words, with its place', () => {
  const layout = pictureLayout(366, 200, false, undefined, 1);
  const text = '← front and back cancel: half a wave of the string is as long as this picture is wide';
  const lines = [
    { x: 100, frequency: 1260, text, kind: 'half-wave' as const },
    { x: 200, frequency: 2000, text: 'the back adds', kind: 'remark' as const },
    { x: 205, frequency: 2100, text: 'they cancel, and so on', kind: 'remark' as const },
    { x: 207, frequency: 2150, text: 'no room', kind: 'remark' as const },
    { x: 209, frequency: 10000, text: 'no room for what is estimated →', kind: 'range-above' as const }
  ];
  const labels = laneLabels(lines, layout);
  expect(labels.map((label) => label !== null)).toEqual([false, true, false, false, false]);
  expect(leftOut(lines, labels)).toEqual([
    `below 1.26 kHz: ${text.slice(2)}`,
    'line at 2.1 kHz: they cancel, and so on',
    'line at 2.15 kHz: no room',
    'above 10.0 kHz: no room for what is estimated'
  ]);
});
