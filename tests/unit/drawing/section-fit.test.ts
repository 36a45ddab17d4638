import { describe, expect, it } from 'vitest';
import type { Installation } from '../../../src/lib/acoustics/installation.js';
import { oneScale, sectionFit } from '../../../src/lib/drawing/section-fit.js';
import { sectionOf } from '../../../src/lib/drawing/section.js';
import { withKnob } from '../../../src/lib/acoustics/mounts/size-knobs.js';
import { demoBench } from '../../../src/lib/file/demo-bench.js';
import { installationOf } from '../../../src/lib/file/installation-of.js';

const bench = demoBench();
const all = bench.setups.map((setup) => installationOf(bench, setup));
const fitted = (installation: Installation) => ({
  bounds: sectionOf(installation).bounds,
  kind: installation.mount.kind
});

describe('oneScale', () => {
  it('keeps every mount with its string inside at the same scale, whatever the picture', () => {
    for (const [width, height] of [
      [600, 300],
      [300, 600],
      [1100, 90],
      [40, 40]
    ]) {
      const scale = oneScale(all.map(fitted), width, height);
      for (const installation of all) {
        const { bounds } = sectionOf(installation);
        const { x, y } = sectionFit({ bounds }, scale, width, height);
        const string = installation.mount.kind === 'box' ? 0 : 4;
        expect(x + (bounds.left - string) * scale).toBeGreaterThanOrEqual(0);
        expect(x + (bounds.right + string) * scale).toBeLessThanOrEqual(width);
        expect(y + (bounds.top - string) * scale).toBeGreaterThanOrEqual(0);
        expect(y + (bounds.bottom + string) * scale).toBeLessThanOrEqual(height);
      }
    }
  });

  it('stays while a plate grows to 200 mm, so that one sees it grow', () => {
    const [, plate] = all;
    const scales = [0.05, 0.102, 0.2].map((width) =>
      oneScale([fitted({ ...plate, mount: withKnob(plate.mount, 'width', width) })], 640, 300)
    );
    expect(new Set(scales).size).toBe(1);
  });

  it('is not negative in a picture of no size', () => {
    expect(oneScale([fitted(all[0])], 0, 0)).toBe(0);
  });
});
