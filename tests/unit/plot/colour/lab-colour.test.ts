import { describe, it } from 'vitest';
import { fromLab, fromLight, toLab, toLight, type Rgb } from '../../../../src/lib/plot/colour/lab-colour.js';
import { close } from '../../../helpers/close.js';
import { random } from '../random.js';

describe('toLab', () => {
  const known: [string, Rgb, [number, number, number]][] = [
    ['white', [255, 255, 255], [100, 0, 0]],
    ['black', [0, 0, 0], [0, 0, 0]],
    ['red', [255, 0, 0], [53.24, 80.09, 67.2]],
    ['green', [0, 255, 0], [87.74, -86.18, 83.18]],
    ['blue', [0, 0, 255], [32.3, 79.19, -107.86]]
  ];
  for (const [name, rgb, expected] of known)
    it(`knows ${name}`, () => {
      toLab(rgb).forEach((x, i) =>
        close(x, expected[i], { abs: 0.03, because: 'the published values of the sRGB primaries, D65' })
      );
    });
});

describe('fromLab', () => {
  it('gives back what toLab was given', () => {
    const draw = random(5);
    for (let n = 0; n < 200; n++) {
      const rgb: Rgb = [255 * draw(), 255 * draw(), 255 * draw()];
      fromLab(toLab(rgb)).forEach((x, i) =>
        close(x, rgb[i], { abs: 0.01, because: 'matrices to seven digits' })
      );
    }
  });
  it('clips what a screen has not', () => {
    for (const x of fromLab([50, 150, -150]))
      close(Math.max(0, Math.min(255, x)), x, { because: 'within a byte' });
  });
});

describe('fromLight', () => {
  it('is the inverse of toLight, and half of the light is 188', () => {
    for (const channel of [0, 5, 10, 11, 100, 255])
      close(fromLight(toLight(channel)), channel, {
        abs: 1e-3,
        because: 'IEC 61966-2-1, constants to four digits'
      });
    close(fromLight(0.5), 187.5, { abs: 0.1, because: 'IEC 61966-2-1' });
  });
});
