import { describe, expect, it } from 'vitest';
import { fromLight, toLab, toLight, type Rgb } from '../../../../src/lib/plot/colour/lab-colour.js';
import { pressureColours, SHADES } from '../../../../src/lib/plot/colour/pressure-colours.js';
import { close } from '../../../helpers/close.js';

/** The sheets of the page and of the projector view, light and dark. */
const sheets: [string, Rgb][] = [
  ['light', [255, 254, 249]],
  ['white', [255, 255, 255]],
  ['dark', [27, 32, 39]],
  ['inverted', [18, 23, 29]]
];

/**
 * How a colour looks without one kind of cone, on linear light: G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, IEEE Trans. Vis.
 * Comput. Graph. 15 (2009) 1291, severity 1 (matrices from memory; their rows add up to 1, so that greys stay).
 */
const eyes: Record<string, number[][]> = {
  usual: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1]
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998]
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881]
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039]
  ]
};

function seenBy(eye: number[][], rgb: Rgb): Rgb {
  const light = rgb.map(toLight);
  const [red, green, blue] = eye.map((row) => fromLight(row.reduce((sum, x, i) => sum + x * light[i], 0)));
  return [red, green, blue];
}

/** CIE 1976 colour difference; 2.3 is just noticeable. */
function difference(a: Rgb, b: Rgb): number {
  const [p, q] = [toLab(a), toLab(b)];
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}

const luminance = (rgb: Rgb) =>
  0.2126 * toLight(rgb[0]) + 0.7152 * toLight(rgb[1]) + 0.0722 * toLight(rgb[2]);

for (const [name, sheet] of sheets)
  describe(`pressureColours on a ${name} sheet`, () => {
    const colours = pressureColours(sheet);
    const at = (share: number): Rgb => {
      const o = 3 * (Math.round(share * SHADES) + SHADES);
      return [colours[o], colours[o + 1], colours[o + 2]];
    };

    it('has the sheet itself in its middle', () => {
      expect(at(0)).toEqual([...sheet]);
    });

    it('is as light on one side as on the other, and evenly spaced', () => {
      const [middle, end] = [toLab(at(0))[0], toLab(at(1))[0]];
      for (let share = 0; share <= 1; share += 0.05) {
        const [pressed, thinned] = [toLab(at(share))[0], toLab(at(-share))[0]];
        close(pressed, thinned, { abs: 0.6, because: 'colours are whole bytes' });
        close(pressed, middle + (Math.round(share * SHADES) / SHADES) * (end - middle), {
          abs: 0.6,
          because: 'a straight line, none of it clipped'
        });
      }
    });

    for (const [eye, matrix] of Object.entries(eyes))
      it(`keeps pressed and thinned apart, and both from the sheet: ${eye}`, () => {
        const seen = (share: number) => seenBy(matrix, at(share));
        expect(difference(seen(1), seen(-1))).toBeGreaterThan(50);
        expect(difference(seen(0.5), seen(-0.5))).toBeGreaterThan(25);
        for (const side of [1, -1])
          for (let share = 0.1; share <= 1; share += 0.1)
            expect(difference(seen(side * share), seen(0))).toBeGreaterThan(40 * share);
      });

    it('ends 3:1 against the sheet', () => {
      for (const end of [at(1), at(-1)]) {
        const [a, b] = [luminance(end), luminance(sheet)].sort((x, y) => y - x);
        expect((a + 0.05) / (b + 0.05)).toBeGreaterThan(3);
      }
    });
  });
