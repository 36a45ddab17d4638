import fc from 'fast-check';
import { expect, test } from 'vitest';
import { outlineLength } from '../../../src/lib/acoustics/outline.js';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { speakerDrawing, type SpeakerDrawing } from '../../../src/lib/drawing/speaker-drawing.js';
import { close } from '../../helpers/close.js';

/** All coordinates of a path of absolute M, L, H, V, A and Q that are places along x and y. */
function numbersOf(path: string): number[] {
  return (path.match(/-?\d+(\.\d+)?(e-?\d+)?/g) ?? []).map(Number);
}

function pathsOf({ frame, basket, cone, cap, former, iron, magnet }: SpeakerDrawing): string[] {
  return [frame, basket, cone, cap, former, iron, magnet];
}

test('sizes are drawn to scale: the oval’s frame is 40 mm, its cone 34 mm to the middle of the surround, 12 mm deep', () => {
  const drawing = speakerDrawing(SPEAKERS.oval);
  expect([drawing.halfLength, drawing.depth]).toEqual([20, 12]);
  const frame = numbersOf(drawing.frame);
  expect(Math.max(...frame)).toBe(20);
  expect(Math.min(...frame)).toBe(-20);
  close(drawing.at.surround[0], 17, { abs: 1e-9, because: 'half of 34 mm, in the middle of the roll' });
  expect(Math.max(...numbersOf(drawing.iron))).toBe(12);
  close(drawing.travel.to - drawing.travel.from, 1.6, { abs: 1e-9, because: 'twice 0.8 mm' });
});

test('every speaker that comes with the program is drawn within its frame and depth, part inside part', () => {
  for (const speaker of Object.values(SPEAKERS)) {
    const drawing = speakerDrawing(speaker);
    const rim = outlineLength(speaker.frame) * 500;
    for (const path of pathsOf(drawing))
      for (const number of numbersOf(path))
        expect(Math.abs(number)).toBeLessThanOrEqual(Math.max(rim, drawing.depth) + 1e-9);
    for (const [part, [x, y]] of Object.entries(drawing.at)) {
      expect([part, Math.abs(x) <= rim * 1.07]).toEqual([part, true]);
      expect([part, y >= -drawing.above - 1e-9 && y <= drawing.depth]).toEqual([part, true]);
    }
    expect(drawing.at.coil[0]).toBeLessThan(drawing.at.magnet[0]);
    expect(drawing.at.magnet[0]).toBeLessThan(drawing.at.surround[0]);
  }
});

test('any speaker has a drawing without a hole in its numbers', () => {
  const size = fc.double({ min: 0.001, max: 0.5, noNaN: true });
  fc.assert(
    fc.property(
      size,
      size,
      fc.double({ min: 0.05, max: 1, noNaN: true }),
      size,
      (length, width, share, depth) => {
        const drawing = speakerDrawing({
          frame: { shape: 'rectangle', length, width },
          cone: { shape: 'ellipse', length: length * share, width: width * share },
          depth,
          motor: { xmax: 0.1 }
        });
        for (const path of [...pathsOf(drawing), drawing.surround, drawing.depthLine])
          expect(path).not.toMatch(/NaN|Infinity/);
        for (const point of Object.values(drawing.at)) expect(point.every(Number.isFinite)).toBe(true);
      }
    ),
    { numRuns: 50 }
  );
});
