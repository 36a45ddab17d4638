import { describe, expect, it } from 'vitest';
import { enlarge } from '../../../../src/lib/plot/colour/enlarge.js';
import { paintPressure } from '../../../../src/lib/plot/colour/paint-pressure.js';
import { parseRgb } from '../../../../src/lib/plot/colour/parse-rgb.js';
import { pressureColours, SHADES } from '../../../../src/lib/plot/colour/pressure-colours.js';
import { signedRoot } from '../../../../src/lib/plot/colour/signed-root.js';
import { movedOn, stillMoves } from '../../../../src/lib/plot/pictures/wave-time.js';
import { keyStops, waveKeyLayout } from '../../../../src/lib/plot/pictures/wave-key.js';
import { close } from '../../../helpers/close.js';

describe('signedRoot', () => {
  it('keeps the sign, shows a tenth as a quarter and ends at full', () => {
    close(signedRoot(0.1, 1), 0.256, { abs: 1e-3, because: '(√0.11 − 0.1)/(√1.01 − 0.1)' });
    expect([-4, 0, 4, 9].map((value) => signedRoot(value, 4))).toEqual([-1, 0, 1, 1]);
    expect(signedRoot(-1, 4)).toBe(-signedRoot(1, 4));
  });
  it('goes through 0 as a straight line, not steeper than 6 times', () => {
    const [a, b] = [1e-5, 2e-5].map((value) => signedRoot(value, 1));
    close(b / a, 2, { rel: 1e-3, because: 'bends at a hundredth' });
    expect(a / 1e-5).toBeLessThan(6);
  });
});

describe('paintPressure', () => {
  const colours = pressureColours([255, 254, 249]);
  it('paints still air as the sheet and both ends as the ends of the scale, opaque', () => {
    const pixels = new Uint8ClampedArray(16);
    // (√(x + 0.01) − 0.1)/(√1.01 − 0.1) is a half at x = 0.29525
    paintPressure(Float32Array.of(0, 2, -2, 0.5905), 2, colours, pixels);
    const end = 3 * 2 * SHADES;
    const half = 3 * (SHADES + Math.round(SHADES / 2));
    expect([...pixels]).toEqual([
      ...[255, 254, 249, 255],
      ...[...colours.subarray(end, end + 3), 255],
      ...[...colours.subarray(0, 3), 255],
      ...[...colours.subarray(half, half + 3), 255]
    ]);
  });
});

describe('enlarge', () => {
  it('keeps a slope a slope, and holds it beyond the outermost middles', () => {
    const from = {
      columns: 4,
      rows: 3,
      values: Float32Array.from({ length: 12 }, (_, i) => (i % 4) + 10 * Math.floor(i / 4))
    };
    const into = { columns: 12, rows: 6, values: new Float32Array(72) };
    enlarge(from, into);
    for (let row = 0; row < 6; row++)
      for (let column = 0; column < 12; column++) {
        const x = Math.max(0, Math.min(3, (column + 0.5) / 3 - 0.5));
        const y = Math.max(0, Math.min(2, (row + 0.5) / 2 - 0.5));
        close(into.values[12 * row + column], x + 10 * y, { abs: 1e-5, because: 'linear' });
      }
  });
  it('takes a single row or column', () => {
    const into = { columns: 2, rows: 2, values: new Float32Array(4) };
    enlarge({ columns: 1, rows: 1, values: Float32Array.of(7) }, into);
    expect([...into.values]).toEqual([7, 7, 7, 7]);
    enlarge({ columns: 1, rows: 2, values: Float32Array.of(1, 3) }, into);
    expect([...into.values]).toEqual([1, 1, 3, 3]);
  });
});

describe('movedOn', () => {
  it('shows a period in 1.6 s and begins it again', () => {
    let share = 0;
    for (let frame = 0; frame < 120; frame++) share = movedOn('tone', share, 1 / 60);
    close(share, 0.25, { abs: 1e-9, because: '2 s are a period and a quarter' });
    expect(stillMoves('tone', 1)).toBe(true);
  });
  it('plays a puff in 8 s and rests at its end', () => {
    let share = 0;
    let frames = 0;
    for (; stillMoves('puff', share); frames++) share = movedOn('puff', share, 1 / 60);
    expect(share).toBe(1);
    close(frames, 480, { abs: 1, because: 'eight seconds of frames, and rounding' });
  });
  it('does not jump after a pause, nor go back', () => {
    close(movedOn('tone', 0.5, 3600), 0.5 + 0.1 / 1.6, {
      abs: 1e-12,
      because: 'a tenth of a second at most'
    });
    expect(movedOn('puff', 0.5, -1)).toBe(0.5);
  });
});

describe('parseRgb', () => {
  it('reads what browsers write', () => {
    expect(parseRgb('rgb(27, 32, 39)')).toEqual([27, 32, 39]);
    expect(parseRgb('rgba(27, 32, 39, 0.5)')).toEqual([27, 32, 39]);
    expect(parseRgb('color(srgb 1 0.5 0)')).toEqual([255, 127.5, 0]);
  });
  it('knows that there is no colour', () => {
    for (const text of ['', 'rgba(0, 0, 0, 0)', 'canvas', 'color(display-p3 1 0 0)', 'rgb(a, b, c)'])
      expect(parseRgb(text)).toBeNull();
  });
});

describe('waveKeyLayout', () => {
  it('keeps its bar between the words and inside the width, from 260 pixels on', () => {
    for (const width of [260, 330, 640, 1200]) {
      const { bar, height, gap } = waveKeyLayout(width, 13);
      expect(bar.left).toBeGreaterThan(60);
      expect(bar.right - bar.left).toBeGreaterThan(13);
      expect(bar.right + gap).toBeLessThan(width - 80);
      expect(bar.bottom).toBeLessThan(height);
    }
  });
});

describe('keyStops', () => {
  it('runs from one end of the scale over the sheet to the other', () => {
    const colours = pressureColours([255, 254, 249]);
    const stops = keyStops(colours);
    expect(stops[0]).toEqual({ offset: 0, colour: `rgb(${[...colours.subarray(0, 3)].join(' ')})` });
    expect(stops[(stops.length - 1) / 2]).toEqual({ offset: 0.5, colour: 'rgb(255 254 249)' });
    expect(stops[stops.length - 1].offset).toBe(1);
  });
});
