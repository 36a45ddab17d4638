import { describe, expect, it } from 'vitest';
import { outlineLength } from '../../../../src/lib/acoustics/outline.js';
import { fieldOnGrid } from '../../../../src/lib/waves/field/field-on-grid.js';
import { rowAt, type SectionGrid } from '../../../../src/lib/waves/field/section-grid.js';
import {
  puffAt,
  puffField,
  puffFrequencies,
  puffImage,
  puffSpan,
  type PuffField
} from '../../../../src/lib/waves/field/puff.js';
import { solveWave, waveProblem, type WaveProblem } from '../../../../src/lib/waves/solve/wave-problem.js';
import { close } from '../../../helpers/close.js';
import { boxMesh, C, coarse, OVAL, waveNumber } from '../wave-cases.js';

const frequencies = puffFrequencies(20000);
/** σ of the pulse, from what is documented: 55 dB down at the last frequency. */
const SIGMA = Math.sqrt(2 * (55 / 20) * Math.LN10) / (2 * Math.PI * frequencies[frequencies.length - 1]);
const pulse = (t: number) => Math.exp(-((t / SIGMA) ** 2) / 2);

function puffOf(problem: WaveProblem, grid: SectionGrid): PuffField {
  return puffField(
    frequencies,
    [...frequencies].map((f) => puffImage(problem, C, f, grid))
  );
}

/** The pressure at all pixels at a time. */
function at(puff: PuffField, time: number): Float32Array {
  const into = new Float32Array(puff.before.length);
  puffAt(puff, time, into);
  return into;
}

/** A thin column of pixels in front of the middle. */
const column = (bottom: number, top: number, rows: number): SectionGrid => ({
  plane: 'length',
  left: -0.001,
  right: 0.001,
  bottom,
  top,
  columns: 1,
  rows
});

describe('puff', () => {
  it('is in front of a large plate the pulse that a piston in an endless plate gives, until the edge is heard', () => {
    const a = 0.015;
    const plate = boxMesh([0.24, 0.24, 0], { sides: false, ends: false, floor: false }, [0.011, 0.011, 0]);
    const problem = waveProblem(plate, [{ outline: { shape: 'round', diameter: 2 * a }, middle: [0, 0, 0] }]);
    const grid = column(0.02, 0.06, 4);
    const puff = puffOf(problem, grid);
    for (let row = 0; row < grid.rows; row++) {
      const z = rowAt(grid, row);
      const edge = (0.12 + Math.hypot(0.12, z)) / C;
      for (let t = -3 * SIGMA; t < edge - 3 * SIGMA; t += 2e-5) {
        // p/ρ = c·∫ a dt between the times at which the middle and the rim of the cone are heard
        let expected = 0;
        const [first, last] = [t - Math.hypot(z, a) / C, t - z / C];
        for (let i = 0; i < 200; i++)
          expected += (C * pulse(first + ((i + 0.5) * (last - first)) / 200) * (last - first)) / 200;
        close(at(puff, t)[row], expected, {
          abs: 0.02 * ((a * a) / (2 * z)),
          because:
            'P. R. Stepanishen, J. Acoust. Soc. Am. 49 (1971) 1629; of its height, a mesh of λ/6 at 5 kHz'
        });
      }
    }
  });

  it('runs at the speed of sound', () => {
    const problem = waveProblem(coarse('plate', 0.01), [{ outline: OVAL, middle: [0, 0, 0] }]);
    const grid = column(0.095, 0.205, 11);
    const puff = puffOf(problem, grid);
    // when the rising pulse reaches a tenth of what it would be in front of an endless plate
    const arrival = (row: number) => {
      const tenth = problem.pistons[0].area / (20 * Math.PI * rowAt(grid, row));
      let t = 0;
      while (at(puff, t)[row] < tenth) t += 1e-6;
      return t;
    };
    close(0.1 / (arrival(0) - arrival(10)), C, {
      rel: 0.01,
      because: 'the middle of a cone is nearer than its rim'
    });
  });

  for (const form of ['plate', 'shell', 'box'] as const)
    it(`is nowhere before it can have come there: ${form}`, () => {
      const problem = waveProblem(
        coarse(form, form === 'box' ? 0.006 : 0.012),
        [{ outline: OVAL, middle: [0, 0, 0] }],
        0.01
      );
      const grid: SectionGrid = {
        plane: 'length',
        left: -0.2,
        right: 0.2,
        bottom: -0.2,
        top: 0.2,
        columns: 20,
        rows: 20
      };
      const puff = puffOf(problem, grid);
      const { from } = puffSpan(frequencies);
      for (const t of [from, 0, 2e-4]) {
        const p = at(puff, t);
        for (let pixel = 0; pixel < p.length; pixel++) {
          const [x, z] = [-0.19 + 0.02 * (pixel % 20), 0.19 - 0.02 * Math.floor(pixel / 20)];
          // from the rim of the cone; the pulse begins 3σ before its peak
          if (Math.hypot(Math.max(0, Math.abs(x) - outlineLength(OVAL) / 2), z) < C * (t + 3.3 * SIGMA))
            continue;
          close(p[pixel] / (problem.pistons[0].area / (2 * Math.PI * 0.05)), 0, {
            abs: 0.01,
            because:
              'over the peak 5 cm in front of an endless plate; 3.3σ before its peak the pulse has 0.4 %'
          });
        }
      }
    });

  it('leaves the air of a closed box thinned out by as much as the cone has moved', () => {
    const problem = waveProblem(coarse('box', 0.006), [{ outline: OVAL, middle: [0, 0, 0] }]);
    const grid = column(-0.01, -0.008, 1);
    const puff = puffOf(problem, grid);
    for (const t of [5e-4, 1e-3, 2e-3]) {
      // long after the pulse: σ·√(2π)·t, over the peak of the acceleration
      const moved = SIGMA * Math.sqrt(2 * Math.PI) * t;
      close(at(puff, t)[0], (-C * C * problem.pistons[0].area * moved) / (0.042 * 0.029 * 0.017), {
        rel: 0.06,
        because: 'a spring (R. H. Small 1972) and some standing wave; what the sum repeats costs up to 5 %'
      });
    }
  });

  it('is what undamped harmonics four times as close give', () => {
    const problem = waveProblem(coarse('shell', 0.016), [{ outline: OVAL, middle: [0, 0, 0] }]);
    const grid: SectionGrid = {
      plane: 'length',
      left: -0.15,
      right: 0.15,
      bottom: -0.1,
      top: 0.1,
      columns: 6,
      rows: 5
    };
    const puff = puffOf(problem, grid);
    const step = 50;
    const close50 = Array.from({ length: 100 }, (_, i) => step * (i + 1));
    const images = close50.map((f) => fieldOnGrid(problem, solveWave(problem, waveNumber(f)), grid));
    const sum = (t: number, pixel: number) =>
      close50.reduce((s, f, k) => {
        const w =
          2 *
          step *
          Math.sqrt(2 * Math.PI) *
          SIGMA *
          pulse(0) *
          Math.exp(-((2 * Math.PI * f * SIGMA) ** 2) / 2);
        const phase = 2 * Math.PI * f * t;
        return s + w * (images[k].re[pixel] * Math.cos(phase) - images[k].im[pixel] * Math.sin(phase));
      }, 0);
    const most = Math.max(...at(puff, 0).map(Math.abs));
    for (const t of [-1e-4, 0, 3e-4, 1e-3, 2e-3]) {
      const p = at(puff, t);
      for (let pixel = 0; pixel < p.length; pixel++)
        close(p[pixel], sum(t, pixel) - sum(-5 * SIGMA, pixel), {
          abs: 0.01 * most,
          because: 'two ways; what the end of the band leaves grows with the sum'
        });
    }
  });

  it('ends where the mount is solved to, and refuses what is solved to nothing', () => {
    expect(frequencies).toHaveLength(25);
    expect([...puffFrequencies(1050)]).toEqual([200, 400, 600, 800, 1000]);
    expect(() => puffFrequencies(199)).toThrow(RangeError);
  });
});
