import { describe, expect, it } from 'vitest';
import { firstOrderHighPass } from '../../../../src/lib/acoustics/rule/first-order.js';
import { reachesDown } from '../../../../src/lib/acoustics/figures/reaches-down.js';
import type { Response } from '../../../../src/lib/acoustics/response.js';
import { ruleOfThumb } from '../../../../src/lib/acoustics/rule/rule-of-thumb.js';
import { secondOrderHighPass } from '../../../../src/lib/acoustics/rule/second-order.js';
import { fftFrequencies } from '../../../../src/lib/numeric/impulse-response.js';
import { logGrid } from '../../../../src/lib/numeric/log-grid.js';
import { close } from '../../../helpers/close.js';
import { AIR, DEMO, IN_FRONT } from '../../../helpers/demo-installations.js';

const grid = logGrid(20, 20000, 96);

function response(level: (f: number) => number, frequency = grid): Response {
  return {
    frequency,
    re: frequency.map((f) => 10 ** (level(f) / 20)),
    im: new Float64Array(frequency.length)
  };
}

describe('reachesDown', () => {
  it('a level response reaches to the end of its grid', () => {
    expect(reachesDown(response(() => -20))).toBe(20);
  });

  it('a steep fall is found where it is, within the third of an octave that smooths it', () => {
    const edge = reachesDown(response((f) => (f < 300 ? -60 : 0)))!;
    // the sliding band holds a tenth of full power when a tenth of it lies above 300 Hz
    close(edge, 300 * 10 ** (-0.05 + 0.01), {
      rel: 4e-3,
      because: 'the step lies somewhere between two points, 0.7 % apart'
    });
  });

  it('does not depend on the level, nor on the grid', () => {
    const h = (frequency: Float64Array, gain: number): Response => {
      const { re, im } = secondOrderHighPass(frequency, 350, 1.59);
      return { frequency, re: re.map((x) => gain * x), im: im.map((x) => gain * x) };
    };
    const expected = reachesDown(h(grid, 1))!;
    close(reachesDown(h(grid, 0.01))!, expected, { rel: 1e-9, because: 'levels are taken against the mean' });
    close(reachesDown(h(logGrid(50, 16000, 48), 1))!, expected, { rel: 1e-3, because: 'half as fine' });
    close(reachesDown(h(fftFrequencies(4096, 48000), 1))!, expected, {
      rel: 5e-3,
      because: 'linear bins of 12 Hz'
    });
  });

  it('a second-order high-pass of Q 0.7 at 200 Hz is 10 dB down at 200/√3 Hz', () => {
    const h = secondOrderHighPass(grid, 200, Math.SQRT1_2);
    // |H|² = x⁴/(1 + x⁴) = 1/10 at x⁴ = 1/9
    close(reachesDown({ frequency: grid, ...h })!, 200 / Math.sqrt(3), {
      rel: 0.02,
      because: 'smoothing a slope of 12 dB an octave over a third of one'
    });
  });

  it('gives nothing where the treble itself leaves the 10 dB, up or down', () => {
    expect(reachesDown(response((f) => (f > 14000 ? -30 : 0)))).toBeNull();
    expect(reachesDown(response((f) => (f > 14000 ? 30 : 0)))).toBeNull();
    expect(reachesDown({ frequency: grid, ...firstOrderHighPass(grid, 50000) })).toBeNull();
    expect(reachesDown(response(() => -Infinity))).toBeNull();
  });

  it('stops at a peak of more than 10 dB as at a hole', () => {
    for (const sign of [1, -1]) {
      const f = reachesDown(response((x) => (x > 200 && x < 400 ? 20 * sign : 0)))!;
      expect(f).toBeGreaterThan(340);
      expect(f).toBeLessThan(460);
    }
  });

  it('reaches lower on a plate than in free air, and lower still on a larger one', () => {
    const reach = (name: string) => reachesDown(ruleOfThumb(DEMO[name], AIR, IN_FRONT, grid))!;
    expect(reach('flat plate')).toBeLessThan(reach('round plate'));
    expect(reach('round plate')).toBeLessThan(reach('free air'));
  });

  it('refuses a grid that does not cover the middle', () => {
    expect(() => reachesDown(response(() => 0, logGrid(1000, 16000, 48)))).toThrow(
      'a response must cover 700 Hz … 4.5 kHz to be judged, got 1000 … 16000 Hz'
    );
  });
});
