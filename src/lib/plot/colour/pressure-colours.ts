import { fromLab, toLab, type Lab, type Rgb } from './lab-colour.js';

/** The two ends of the scale in lightness, chroma and hue (degrees): alike in lightness, on the axis that all eyes keep. */
interface Ends {
  lightness: number;
  pressed: { chroma: number; hueDeg: number };
  thinned: { chroma: number; hueDeg: number };
}

const ON_LIGHT: Ends = {
  lightness: 42,
  pressed: { chroma: 62, hueDeg: 57 },
  thinned: { chroma: 49, hueDeg: 277 }
};
const ON_DARK: Ends = {
  lightness: 68,
  pressed: { chroma: 76, hueDeg: 60 },
  thinned: { chroma: 49, hueDeg: 274 }
};

/** Colours on either side of the middle. */
export const SHADES = 255;

/**
 * The colours of a pressure from −1 (thinned out, blue) over the sheet's own colour to +1 (pressed together, orange), in
 * 2·SHADES + 1 even steps. Straight lines in CIE L*a*b* to two ends of the same lightness, so that both halves are equally loud.
 *
 * @param sheet the colour that is drawn on, light or dark
 * @returns red, green, blue of every shade, 0 … 255
 */
export function pressureColours(sheet: Rgb): Uint8ClampedArray {
  const middle = toLab(sheet);
  const { lightness, pressed, thinned } = middle[0] > 50 ? ON_LIGHT : ON_DARK;
  const colours = new Uint8ClampedArray(3 * (2 * SHADES + 1));
  for (let shade = -SHADES; shade <= SHADES; shade++) {
    const { chroma, hueDeg } = shade > 0 ? pressed : thinned;
    const hue = (hueDeg * Math.PI) / 180;
    const end: Lab = [lightness, chroma * Math.cos(hue), chroma * Math.sin(hue)];
    const share = Math.abs(shade) / SHADES;
    const mixed = middle.map((from, i) => from + share * (end[i] - from)) as [number, number, number];
    colours.set(shade === 0 ? sheet : fromLab(mixed), 3 * (shade + SHADES));
  }
  return colours;
}
