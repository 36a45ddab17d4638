import { describe, expect, it } from 'vitest';
import { pickedAngle } from '../../../../src/lib/plot/readout/picked-angle.js';
import {
  largestPolar,
  polarLayout,
  polarPoint,
  polarRuns,
  ringLevels,
  ringRadius
} from '../../../../src/lib/plot/scales/polar-layout.js';
import { angleText } from '../../../../src/lib/format/angle-text.js';
import { levelAt, polarRows, polarText } from '../../../../src/lib/plot/readout/polar-rows.js';
import { close } from '../../../helpers/close.js';
import { random } from '../random.js';

const middle = { x: 100, y: 90 };

describe('polarLayout', () => {
  it('leaves room for the angles round the disc', () => {
    for (const [size, bare] of [
      [100, false],
      [300, false],
      [420, true]
    ] as const) {
      const { width, height, radius, middle, textSize, area } = polarLayout(size, bare);
      expect(width).toBeGreaterThanOrEqual(size);
      expect(radius).toBeGreaterThan(textSize * 2);
      // A bare one has no angles at its sides, but the ear on its rim.
      const beside = (bare ? 0.5 : 2.5) * textSize;
      expect(area.left).toBeGreaterThan(beside);
      expect(width - area.right).toBeGreaterThan(beside);
      expect(area.top).toBeGreaterThan(textSize);
      expect(height - area.bottom).toBeGreaterThan(textSize);
      close(middle.y - radius, area.top, { because: 'the disc' });
    }
  });
});

describe('ringLevels', () => {
  it('is +10 to −20 dB, or as far up as the loudest, by tens', () => {
    expect(ringLevels([null])).toEqual([10, 0, -10, -20]);
    expect(ringLevels([Float64Array.of(3, NaN, -Infinity), null])).toEqual([10, 0, -10, -20]);
    expect(ringLevels([Float64Array.of(3), Float64Array.of(10.1)])).toEqual([20, 10, 0, -10]);
  });
});

describe('ringRadius', () => {
  it('is even in decibels, nothing 40 dB down and below, and never beyond the disc', () => {
    expect([10, 0, -10, -30, -80, -Infinity, 25].map((level) => ringRadius(level, 10, 100))).toEqual([
      100, 75, 50, 0, 0, 0, 100
    ]);
  });
});

describe('polarPoint', () => {
  it('has 0° up, 90° right and −90° left', () => {
    const at = (angleDeg: number) => {
      const { x, y } = polarPoint(middle, angleDeg, 50);
      return [Number(x.toFixed(6)), Number(y.toFixed(6))];
    };
    expect([0, 90, -90, 180].map(at)).toEqual([
      [100, 40],
      [150, 90],
      [50, 90],
      [100, 140]
    ]);
  });
});

describe('polarRuns', () => {
  it('breaks where there is no figure, and goes to the middle where nothing is heard', () => {
    const angles = Float64Array.of(-90, 0, 45, 90, 180);
    const runs = polarRuns(angles, Float64Array.of(10, -Infinity, NaN, 10, 0), 10, { middle, radius: 80 });
    expect(runs.map((run) => run.length)).toEqual([2, 2]);
    close(runs[0][0].x, 20, { abs: 1e-9, because: 'full level to the left' });
    expect(runs[0][1]).toEqual(middle);
    close(runs[1][1].y, 150, { abs: 1e-9, because: 'three quarters of the radius down' });
  });
});

describe('pickedAngle', () => {
  it('is the inverse of polarPoint to the nearest 5°', () => {
    const draw = random(9);
    for (let n = 0; n < 300; n++) {
      const angle = Math.round(71 * draw() - 35) * 5 + 0;
      const off = 4.8 * (draw() - 0.5);
      expect(pickedAngle(middle, polarPoint(middle, angle + off, 1 + 100 * draw()))).toBe(
        angle === -180 ? 180 : angle
      );
    }
  });
  it('never says −180° or minus nothing', () => {
    expect(pickedAngle(middle, { x: 99.9, y: 150 })).toBe(180);
    expect(Object.is(pickedAngle(middle, { x: 99.9, y: 20 }), 0)).toBe(true);
  });
});

describe('the figures of the polar picture', () => {
  const angles = Float64Array.from({ length: 121 }, (_, i) => -180 + 3 * i);
  const level = angles.map((angle) => 5 - Math.abs(angle - 30) / 10);

  it('are those at the angles asked for, going round', () => {
    close(levelAt(angles, level, 30), 5, { because: 'it is among the angles' });
    close(levelAt(angles, level, -360 + 31), 5, { because: 'the nearest of 30° and 33°, a turn on' });
    expect(levelAt(new Float64Array(0), new Float64Array(0), 0)).toBeNaN();
  });
  it('stand every 15°, one column a curve', () => {
    const rows = polarRows(angles, [level, level.map(() => -Infinity)]);
    expect(rows).toHaveLength(25);
    expect(rows[0]).toEqual(['−180°', '−16 dB', 'silent']);
    expect(rows[12]).toEqual(['0°', '+2 dB', 'silent']);
    expect(rows[24][0]).toBe('180°');
  });
  it('are said in a sentence', () => {
    expect(polarText(angles, level, -30)).toBe('−1 dB at the listener, −30°; loudest +5 dB at 30°');
    expect(polarText(angles, null, 90)).toBe('no figures yet; the listener is at 90°');
  });
  it('write angles with a true minus sign', () => {
    expect([-0.2, -90, 45].map(angleText)).toEqual(['0°', '−90°', '45°']);
  });
});

describe('largestPolar', () => {
  it('fills the room across or up and down, whichever is less, words and all', () => {
    for (const [width, height] of [
      [300, 900],
      [900, 300]
    ]) {
      const layout = polarLayout(largestPolar(width, height, 20), true, 20);
      expect(layout.width).toBeLessThanOrEqual(width);
      expect(layout.height).toBeLessThanOrEqual(height + 1e-9);
      expect(Math.max(layout.width / width, layout.height / height)).toBeCloseTo(1, 9);
    }
  });
});
