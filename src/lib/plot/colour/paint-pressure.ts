import { SHADES } from './pressure-colours.js';
import { signedRoot } from './signed-root.js';

/**
 * Paints pressures as pixels, opaque, in the colours of `pressureColours`.
 *
 * @param full the pressure that is drawn in full colour
 * @param pixels red, green, blue, alpha of every pixel, as in ImageData
 */
export function paintPressure(
  pressure: Float32Array,
  full: number,
  colours: Uint8ClampedArray,
  pixels: Uint8ClampedArray
): void {
  for (let p = 0; p < pressure.length; p++) {
    const from = 3 * (Math.round(SHADES * signedRoot(pressure[p], full)) + SHADES);
    pixels[4 * p] = colours[from];
    pixels[4 * p + 1] = colours[from + 1];
    pixels[4 * p + 2] = colours[from + 2];
    pixels[4 * p + 3] = 255;
  }
}
