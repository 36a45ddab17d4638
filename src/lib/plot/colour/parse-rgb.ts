import type { Rgb } from './lab-colour.js';

/**
 * A colour as browsers give it back from computed style: `rgb(r, g, b)` or `rgba(r, g, b, a)`, or `color(srgb r g b)` with
 * shares of 1. Null for anything else, and for what can be seen through entirely.
 */
export function parseRgb(text: string): Rgb | null {
  const found = /^(rgba?|color)\((?:srgb )?([^)]*)\)$/.exec(text.trim());
  if (!found) return null;
  const [red, green, blue, alpha = 1] = found[2].split(/[\s,/]+/).map(Number);
  if (![red, green, blue, alpha].every(Number.isFinite) || alpha === 0) return null;
  const scale = found[1] === 'color' ? 255 : 1;
  return [red * scale, green * scale, blue * scale];
}
