import { complexArray, type ComplexArray } from '../../numeric/complex-array.js';
import type { Decibels, Hertz } from '../../units.js';
import { checkWithin } from '../limits.js';

/** What is put before the amplifier to make more of the low end: a low shelf. */
export interface Lift {
  /** What the lowest frequencies get. */
  gainDb: Decibels;
  /** Half of it, in dB, is left here, and nothing far above. */
  below: Hertz;
}

/** Least and greatest values. */
export const LIFT_LIMITS = { gainDb: [0, 18], below: [50, 1000] } as const satisfies Record<
  string,
  readonly [number, number]
>;

/** Where a lift begins unless told: about the resonance of a small speaker. */
export const USUAL_BELOW: Hertz = 300;

/** @throws RangeError with one sentence for values beyond `LIFT_LIMITS` */
export function checkLift({ gainDb, below }: Lift): void {
  checkWithin('the lift', gainDb, LIFT_LIMITS.gainDb, 'dB');
  checkWithin('the frequency below which is lifted', below, LIFT_LIMITS.below, 'Hz');
}

/**
 * The low shelf of a lift, with s = jf/below and A = 10^(gainDb/40):
 *
 *     H = A·(s² + √(2A)·s + A)/(A·s² + √(2A)·s + 1)
 *
 * A² at 0 Hz, A at `below`, 1 far above, and monotone between (R. Bristow-Johnson, Audio EQ Cookbook, W3C Working Group Note
 * 8 June 2021: lowShelf, slope S = 1).
 *
 * @param frequency Hz, each at least 0
 */
export function liftResponse({ gainDb, below }: Lift, frequency: Float64Array): ComplexArray {
  const a = 10 ** (gainDb / 40);
  const out = complexArray(frequency.length);
  for (let i = 0; i < frequency.length; i++) {
    const w = frequency[i] / below;
    const turn = Math.sqrt(2 * a) * w;
    const [top, bottom] = [a - w * w, 1 - a * w * w];
    const size = a / (bottom * bottom + turn * turn);
    out.re[i] = size * (top * bottom + turn * turn);
    out.im[i] = size * turn * (bottom - top);
  }
  return out;
}

/** Whether one lift nowhere gives more than another; none gives nothing. */
export function isWithin(lift: Lift | null, other: Lift | null): boolean {
  if (lift === null || lift.gainDb === 0) return true;
  return other !== null && lift.gainDb <= other.gainDb && lift.below <= other.below;
}
