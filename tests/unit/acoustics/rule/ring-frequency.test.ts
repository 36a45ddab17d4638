import { describe, expect, it } from 'vitest';
import { ringFrequency } from '../../../../src/lib/acoustics/rule/ring-frequency.js';
import { close } from '../../../helpers/close.js';
import { shellTops } from '../../../helpers/shell-tops.js';
import rings from '../../../reference/shell-rings.json';

const C = 343.2;
const inMetres = ({ length, width, height }: { length: number; width: number; height: number }) => ({
  length: length / 1000,
  width: width / 1000,
  height: height / 1000
});

describe('ringFrequency', () => {
  it('is that of 203 solved shells within 4 %, 1.5 % where they are at least as deep as wide', () => {
    expect(rings.shells).toHaveLength(203);
    for (const shell of rings.shells)
      close(ringFrequency(inMetres(shell), C) / shell.frequency, 1, {
        abs: shell.height >= shell.width ? 0.015 : 0.04,
        because: `what is stated, ${shell.length} × ${shell.width} × ${shell.height} mm`
      });
  });

  it('covers the range that is stated, and not a corner of it', () => {
    const spans = (key: 'length' | 'width' | 'height') => {
      const values = rings.shells.map((shell) => shell[key]);
      return [Math.min(...values), Math.max(...values)];
    };
    expect([spans('length'), spans('width'), spans('height')]).toEqual([
      [40, 400],
      [16, 70],
      [12, 100]
    ]);
    const flattest = Math.min(...rings.shells.map(({ height, width }) => height / width));
    close(flattest, 0.4, { abs: 1e-9, because: '16 × 40 mm' });
  });

  it('is the quarter wave of the height with the end correction of a rectangle, here worked apart', () => {
    // Mean of 1/r over a square of side 1, in closed form for a cell with itself; over a grid of cells for all others.
    const SQUARE = 4 * Math.log(1 + Math.SQRT2) - (4 / 3) * (Math.SQRT2 - 1);
    const n = 40;
    let sum = 0;
    for (let i = -n + 1; i < n; i++)
      for (let j = -n + 1; j < n; j++)
        sum +=
          ((n - Math.abs(i)) * (n - Math.abs(j)) * (i || j ? n / Math.hypot(i, j) : SQUARE * n)) / n ** 4;
    // l = W where 1/W² = 1/L² + 1/(0.755·H + 2.617·W)²
    const [width, height] = [0.03, 0.05];
    const length = 1 / Math.sqrt(1 / width ** 2 - 1 / (0.755 * height + 2.617 * width) ** 2);
    const correction = (0.675 * sum * width) / (2 * Math.PI);
    close(ringFrequency({ length, width, height }, C), C / (4 * (height + correction)), {
      rel: 2e-3,
      because: 'cells near each other are not points'
    });
  });

  it('goes with the speed of sound and against the scale', () => {
    const shell = { length: 0.152, width: 0.033, height: 0.04 };
    const twice = { length: 0.304, width: 0.066, height: 0.08 };
    expect(ringFrequency(twice, C)).toBeCloseTo(ringFrequency(shell, C) / 2, 9);
    expect(ringFrequency(shell, 2 * C)).toBeCloseTo(2 * ringFrequency(shell, C), 9);
  });

  it('has the coefficients that the script has found, as far as the table says', () => {
    const { share, heights, widths } = rings.fit;
    expect([share, heights, widths]).toEqual([0.675, 0.755, 2.617]);
  });
});

it.each([
  [60, 50, 20],
  [152, 30, 100],
  [250, 40, 20],
  // What the words of the help end at.
  [250, 30, 12],
  [60, 50, 45],
  [250, 16, 16],
  [60, 50, 100]
])('the table of solved shells comes out again: %i × %i × %i mm', (length, width, height) => {
  const known = rings.shells.find((s) => s.length === length && s.width === width && s.height === height);
  const sizes = inMetres({ length, width, height });
  const ring = shellTops(sizes).reduce((best, top) => (top.level > best.level ? top : best));
  expect(known ?? [length, width, height]).toEqual(expect.objectContaining({ length, width, height }));
  close(ring.frequency / known!.frequency, 1, { abs: 0.002, because: 'the same computation' });
  close(ring.level, known!.level, { abs: 0.02, because: 'the same computation' });
});

it('does not move with the speaker along the roof: 1.5 %', () => {
  for (const offset of [0.1, 0.2, 0.3]) {
    const sizes = { length: 0.4, width: 0.05, height: 0.045 };
    const [ring] = shellTops(sizes, offset * sizes.length);
    const [middle] = shellTops(sizes);
    close(ring.frequency / middle.frequency, 1, { abs: 0.015, because: 'what is stated' });
  }
});
