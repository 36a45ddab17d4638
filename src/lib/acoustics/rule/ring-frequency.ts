import type { Hertz, Metres, MetresPerSecond } from '../../units.js';
import type { ShellMount } from '../mounts/mount.js';

/** The end correction of the open bottom, as a share of that of the same opening in an endless flat wall. */
const UNFLANGED = 0.675;
/** How far along the trough the air of the opening moves together, in heights and in widths. */
const TOGETHER = { height: 0.755, width: 2.617 };

/**
 * Where a shell with closed ends rings: a trough open at the bottom, a quarter of a wave deep with the end correction of its opening,
 *
 *     f = c/(4·(H + δ)),  δ = 0.675·δ∞(l, W),  1/l² = 1/L² + 1/(0.755·H + 2.617·W)²,
 *
 * H height, W width, L length inside. δ∞ is the exact end correction of a rectangular piston in an endless wall at low frequency,
 * the mean of 1/r over its area (Rayleigh's integral); thin walls give 0.61/0.85 = 0.72 of that for a round pipe (H. Levine and
 * J. Schwinger, Phys. Rev. 73 (1948) 383). Over a long opening the air does not move together, because waves run along it: so it counts
 * with a length l of about a wave at most. The three coefficients are fitted to the wave solution of 203 shells
 * (tests/reference/shell-rings.mjs): within 4 %, and 1.5 % where the shell is at least as deep as wide.
 *
 * Range: L 40 … 400 mm, W 16 … 70 mm and no more than L, H 12 … 100 mm and at least 0.4·W, or the same proportions in another
 * scale; speaker anywhere along the roof (1.5 % more).
 *
 * @param c speed of sound
 */
export function ringFrequency(
  { length, width, height }: Pick<ShellMount, 'length' | 'width' | 'height'>,
  c: MetresPerSecond
): Hertz {
  const together = TOGETHER.height * height + TOGETHER.width * width;
  const counted = 1 / Math.hypot(1 / length, 1 / together);
  return c / (4 * (height + UNFLANGED * endCorrection(counted, width)));
}

/**
 * (1/(2π·S))·∬∬ dS dS′/r over a rectangle a × b, in closed form: the mass of the air in front of a rectangular piston in an endless wall
 * at low frequency, as a length of air.
 */
function endCorrection(a: Metres, b: Metres): Metres {
  const sides = 2 * a * b * (a * Math.asinh(b / a) + b * Math.asinh(a / b));
  const corners = (2 / 3) * (a ** 3 + b ** 3 - Math.hypot(a, b) ** 3);
  return (sides + corners) / (2 * Math.PI * a * b);
}
