import type { Degrees } from '../units.js';

/** An angle in words: "−30°", "0°". */
export function angleText(angleDeg: Degrees): string {
  const whole = Math.round(angleDeg);
  return `${whole < 0 ? `−${-whole}` : whole}°`;
}
