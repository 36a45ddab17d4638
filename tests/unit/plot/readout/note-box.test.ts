import { describe, expect, it } from 'vitest';
import { courseLayout } from '../../../../src/lib/plot/scales/course-layout.js';
import { noteBox, type Note } from '../../../../src/lib/plot/readout/note-box.js';
import { pictureLayout } from '../../../../src/lib/plot/scales/picture-layout.js';

const note: Note = {
  title: '68 Hz, fires 68 times a second',
  rows: [
    { look: 'outline', name: 'the sound itself', value: '−12 dB', levelDb: -12 },
    { look: 'filled', name: 'behind the cab body as baffle', value: '−48 dB', levelDb: -48 }
  ],
  end: '36 dB lost'
};

describe('noteBox', () => {
  it('stays in the area and off the pointed line wherever there is room beside it', () => {
    for (const layout of [pictureLayout(1200, undefined, false), courseLayout(366, undefined)])
      for (let x = layout.area.left; x <= layout.area.right; x += 7) {
        const box = noteBox(note, x, layout);
        expect(box.left).toBeGreaterThanOrEqual(layout.area.left);
        expect(box.right).toBeLessThanOrEqual(layout.area.right);
        expect(box.top).toBeGreaterThanOrEqual(layout.area.top);
        expect(box.bottom).toBeLessThanOrEqual(layout.area.bottom);
        if (!layout.narrow) expect(box.left > x || box.right < x).toBe(true);
      }
  });
  it('is a line lower without a closing line', () => {
    const layout = pictureLayout(1200, undefined, false);
    const whole = noteBox(note, 100, layout);
    const less = noteBox({ ...note, end: null }, 100, layout);
    expect(whole.bottom - whole.top - (less.bottom - less.top)).toBeCloseTo(whole.rowHeight, 9);
  });
});

describe('courseLayout', () => {
  it('is lower than the response picture unless a height is asked for', () => {
    expect([courseLayout(1200, undefined).height, courseLayout(390, undefined).height]).toEqual([200, 150]);
    expect(courseLayout(390, 260)).toEqual(pictureLayout(390, 260, false));
  });
});
