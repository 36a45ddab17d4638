import { describe, expect, it } from 'vitest';
import { pictureLayout } from '../../../../src/lib/plot/scales/picture-layout.js';
import { readoutBox } from '../../../../src/lib/plot/readout/readout-box.js';
import { frequencyScale } from '../../../../src/lib/plot/scales/frequency-scale.js';
import { usualRange } from '../../../../src/lib/plot/scales/picture-range.js';
import type { CurveLevel } from '../../../../src/lib/plot/response-curve.js';

const none = new Float64Array(0);
const levels = ['free air', 'flat plate', 'cab body as baffle', 'closed box', 'round plate', 'tender'].map(
  (name, id): CurveLevel => ({
    curve: { id, numeral: `${id + 1}`, name, frequency: none, levelDb: none, style: 1, heard: id === 1 },
    levelDb: -10
  })
);

describe('pictureLayout', () => {
  it('keeps text of 12 pixels and targets of 24 on a phone', () => {
    const layout = pictureLayout(366, 200, false);
    expect(layout.textSize).toBeGreaterThanOrEqual(12);
    expect(2 * layout.discRadius).toBeGreaterThanOrEqual(24);
    expect(layout.area.bottom - layout.area.top).toBeGreaterThan(150);
  });
  it('draws for the back row when bare: strokes at least 1/200 and text at least 1/30 of the height', () => {
    for (const height of [500, 768, 1080]) {
      const layout = pictureLayout(1280, height, true);
      expect(layout.otherStroke).toBeGreaterThanOrEqual(height / 200);
      expect(layout.textSize).toBeGreaterThanOrEqual(height / 30);
    }
  });
  it('draws for the back row where it is half of a larger picture, too: the text tells how large that one is', () => {
    for (const height of [768, 800, 1080]) {
      const layout = pictureLayout(1280, height / 2, true, Math.ceil(height / 30));
      expect(layout.otherStroke).toBeGreaterThanOrEqual(height / 200);
      expect(layout.heardStroke).toBeGreaterThan(1.4 * layout.otherStroke);
    }
  });
  it('gives the heard curve the thicker stroke', () => {
    for (const width of [366, 1340])
      for (const bare of [false, true]) {
        const layout = pictureLayout(width, 320, bare);
        expect(layout.heardStroke).toBeGreaterThan(1.4 * layout.otherStroke);
      }
  });
  it('has an area even in a container of no width', () => {
    const { area } = pictureLayout(0, 0, false);
    expect(area.right).toBeGreaterThan(area.left);
    expect(area.bottom).toBeGreaterThan(area.top);
  });
});

describe('readoutBox', () => {
  it('stays inside the area at every frequency and every width', () => {
    const band = { low: 1, high: 20000, label: '', outlineDb: -10, filledDb: -24 };
    for (const width of [320, 366, 756, 1336]) {
      const layout = pictureLayout(width, 200, false);
      const x = frequencyScale(usualRange, layout.area);
      for (const at of [50, 200, 1000, 4000, 16000]) {
        const box = readoutBox(at, levels, band, 'the engine', x(at), layout);
        expect(box.left).toBeGreaterThanOrEqual(layout.area.left);
        expect(box.right).toBeLessThanOrEqual(layout.area.right);
        expect(box.top).toBeGreaterThanOrEqual(layout.area.top);
        expect(box.bottom).toBeLessThanOrEqual(layout.area.bottom);
        expect(x(at) < box.left || x(at) > box.right, `the pointed line at ${at} Hz stays in sight`).toBe(
          true
        );
      }
    }
  });
});
