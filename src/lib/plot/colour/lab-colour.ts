/** A colour in sRGB, each 0 … 255. */
export type Rgb = readonly [red: number, green: number, blue: number];

/** CIE L*a*b* against the white of sRGB (D65). */
export type Lab = readonly [lightness: number, a: number, b: number];

/** White of sRGB, Y = 1. */
const WHITE = [0.95047, 1, 1.08883] as const;

/** sRGB to light, linear to XYZ (IEC 61966-2-1). */
const TO_XYZ = [
  [0.4124564, 0.3575761, 0.1804375],
  [0.2126729, 0.7151522, 0.072175],
  [0.0193339, 0.119192, 0.9503041]
] as const;
const FROM_XYZ = [
  [3.2404542, -1.5371385, -0.4985314],
  [-0.969266, 1.8760108, 0.041556],
  [0.0556434, -0.2040259, 1.0572252]
] as const;

/** One channel of sRGB, 0 … 255, as a share of its light, 0 … 1. */
export function toLight(channel: number): number {
  const c = channel / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
}

/** The inverse of `toLight`; what lies outside 0 … 1 is clipped. */
export function fromLight(light: number): number {
  const c = Math.max(0, Math.min(1, light));
  return 255 * (c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055);
}

/** CIE 15: L* = 116·f(Y) − 16, a* = 500·(f(X) − f(Y)), b* = 200·(f(Y) − f(Z)). */
export function toLab(rgb: Rgb): Lab {
  const light = rgb.map(toLight);
  const [x, y, z] = TO_XYZ.map((row, i) => root(dot(row, light) / WHITE[i]));
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** The inverse of `toLab`, not rounded; colours that a screen has not are clipped. */
export function fromLab([lightness, a, b]: Lab): Rgb {
  const y = (lightness + 16) / 116;
  const xyz = [y + a / 500, y, y - b / 200].map((f, i) => cube(f) * WHITE[i]);
  const [red, green, blue] = FROM_XYZ.map((row) => fromLight(dot(row, xyz)));
  return [red, green, blue];
}

function dot(row: readonly number[], v: readonly number[]): number {
  return row[0] * v[0] + row[1] * v[1] + row[2] * v[2];
}

const BEND = 6 / 29;

function root(t: number): number {
  return t > BEND ** 3 ? Math.cbrt(t) : t / (3 * BEND * BEND) + 4 / 29;
}

function cube(f: number): number {
  return f > BEND ? f ** 3 : 3 * BEND * BEND * (f - 4 / 29);
}
