import { describe, expect, it } from 'vitest';
import { sectionFit } from '../../../src/lib/drawing/section-fit.js';
import { sectionOf } from '../../../src/lib/drawing/section.js';
import { withKnob } from '../../../src/lib/acoustics/mounts/size-knobs.js';
import { demoBench } from '../../../src/lib/file/demo-bench.js';
import { installationOf } from '../../../src/lib/file/installation-of.js';

const bench = demoBench();
const all = bench.setups.map((setup) => installationOf(bench, setup));

describe('sectionFit', () => {
  it('keeps every mount with its string inside, whatever the picture', () => {
    for (const installation of all)
      for (const [width, height] of [
        [600, 300],
        [300, 600],
        [1100, 90],
        [40, 40]
      ]) {
        const { bounds } = sectionOf(installation);
        const { scale, x, y } = sectionFit({ bounds }, installation.mount.kind, width, height);
        const string = installation.mount.kind === 'box' ? 0 : 4;
        expect(x + (bounds.left - string) * scale).toBeGreaterThanOrEqual(0);
        expect(x + (bounds.right + string) * scale).toBeLessThanOrEqual(width);
        expect(y + (bounds.top - string) * scale).toBeGreaterThanOrEqual(0);
        expect(y + (bounds.bottom + string) * scale).toBeLessThanOrEqual(height);
      }
  });

  it('keeps its scale while a plate grows to 200 mm, so that one sees it grow', () => {
    const [, plate] = all;
    const scales = [0.05, 0.102, 0.2].map((width) => {
      const grown = { ...plate, mount: withKnob(plate.mount, 'width', width) };
      return sectionFit(sectionOf(grown), 'plate', 640, 300).scale;
    });
    expect(new Set(scales).size).toBe(1);
  });

  it('draws free air and a plate to one scale, so that the speaker stays as it is', () => {
    const [free, plate] = all.map(
      (installation) => sectionFit(sectionOf(installation), installation.mount.kind, 640, 300).scale
    );
    expect(free).toBe(plate);
  });

  it('has no negative scale in a picture of no size', () => {
    expect(sectionFit(sectionOf(all[0]), 'free', 0, 0).scale).toBe(0);
  });
});
