import { curveRuns } from '../../../src/lib/plot/marks/curve-runs.js';
import type { DiscCurve } from '../../../src/lib/plot/labels/disc-places.js';
import { frequencyScale } from '../../../src/lib/plot/scales/frequency-scale.js';
import { levelScale } from '../../../src/lib/plot/scales/level-scale.js';
import type { PictureLayout } from '../../../src/lib/plot/scales/picture-layout.js';
import { usualRange } from '../../../src/lib/plot/scales/picture-range.js';
import { random } from './random.js';

/** One to six curves like those of small speakers: a high-pass, a resonance, a ripple, now and then a gap; `shiftDb` moves them past each other. */
export function randomFamily(seed: number, layout: PictureLayout, shiftDb = 0): DiscCurve[] {
  const draw = random(seed);
  const count = 1 + Math.floor(draw() * 6);
  const heard = Math.floor(draw() * count);
  const frequency = Float64Array.from({ length: 401 }, (_, i) => 50 * 320 ** (i / 400));
  const x = frequencyScale(usualRange, layout.area);
  const y = levelScale(usualRange, layout.area);
  return Array.from({ length: count }, (_, id) => {
    const corner = 100 * 80 ** draw();
    const slope = 1 + 2 * draw();
    const [peakAt, peakDb, peakWidth] = [200 * 40 ** draw(), -15 + 30 * draw(), 0.05 + draw()];
    const [ripple, phase, offset] = [3 * draw(), 6 * draw(), -10 * draw()];
    const gapFrom = draw() < 0.2 ? Math.floor(draw() * 300) : 500;
    const levelDb = frequency.map((f, i) => {
      if (i > gapFrom && i < gapFrom + 40) return NaN;
      const fall = -10 * slope * Math.log10(1 + (corner / f) ** 2);
      const peak = peakDb * Math.exp(-((Math.log(f / peakAt) / peakWidth) ** 2));
      return (
        fall +
        peak +
        ripple * Math.sin(8 * Math.log(f) + phase) +
        offset +
        (id % 2 === 0 ? shiftDb : -shiftDb / 2)
      );
    });
    return { id, heard: id === heard, runs: curveRuns({ frequency, levelDb }, x, y, layout.area) };
  });
}
