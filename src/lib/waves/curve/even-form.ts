import { complexArray, type ComplexArray } from '../../numeric/complex-array.js';
import type { Hertz } from '../../units.js';
import type { Complex } from '../../numeric/complex.js';

/**
 * How an output behaves at low frequency: like jf (an open mount far away), like 1/f² (the load of a box), anything up to 1/f² (the load of
 * a mount with openings, which is a spring, friction or a mass by turns), or finite.
 */
export type LowEnd = 'rises' | 'compliance' | 'vented' | 'finite';

/** What lies behind a cone: free air, a room with openings, or a closed one. */
export type Behind = 'open' | 'vented' | 'closed';

/** How a load behaves at low frequency: friction and mass of openings are in it, unless a closed room holds it. */
export type LoadLowEnd = Exclude<LowEnd, 'rises'>;

/** Below this the even form of a vented load falls like f². */
const VENTED: Hertz = 300;

export function lowEndOfLoad(behind: Behind, openings: number): LoadLowEnd {
  if (behind === 'closed') return 'compliance';
  return behind === 'vented' || openings > 0 ? 'vented' : 'finite';
}

/** By what a load is multiplied in its even form. */
export function loadScale(low: LowEnd, f: Hertz): number {
  if (low === 'compliance') return f * f;
  return low === 'vented' ? (f * f) / (f * f + VENTED * VENTED) : 1;
}

/** The limit of f² over `loadScale` at 0 Hz. */
export function limitAtZero(low: LoadLowEnd): number {
  return { finite: 0, vented: VENTED * VENTED, compliance: 1 }[low];
}

/** An output as it is interpolated: H/(jf), f²·z, f²/(f² + f0²)·z or the output itself, finite at 0 Hz and conjugate at −f. */
export function toEven(output: ComplexArray, frequency: Float64Array, low: LowEnd): ComplexArray {
  const out = complexArray(frequency.length);
  for (let i = 0; i < frequency.length; i++) {
    const f = frequency[i];
    if (low === 'rises') {
      out.re[i] = output.im[i] / f;
      out.im[i] = -output.re[i] / f;
    } else {
      const scale = loadScale(low, f);
      out.re[i] = output.re[i] * scale;
      out.im[i] = output.im[i] * scale;
    }
  }
  return out;
}

/** The response H of which `toEven` made jf·even, or even itself. */
export function fromEven(even: ComplexArray, frequency: Float64Array, low: 'rises' | 'finite'): ComplexArray {
  if (low === 'finite') return even;
  const out = complexArray(frequency.length);
  for (let i = 0; i < frequency.length; i++) {
    out.re[i] = -frequency[i] * even.im[i];
    out.im[i] = frequency[i] * even.re[i];
  }
  return out;
}

/**
 * By how much a constant loss factor turns what comes of a closed surface at low frequency, where its air is a spring of
 * (1 − jη)²: taken off, the output is real at 0 Hz, as what is conjugate at −f must be. 1 for an open one.
 */
export function lossTurn(behind: Behind, loss: number): Complex {
  return behind === 'open' ? { re: 1, im: 0 } : { re: 1 - loss * loss, im: -2 * loss };
}

/** Multiplies by a complex constant, in place. */
export function turnedBy(values: ComplexArray, { re, im }: Complex): ComplexArray {
  for (let i = 0; i < values.re.length; i++) {
    const x = values.re[i] * re - values.im[i] * im;
    values.im[i] = values.re[i] * im + values.im[i] * re;
    values.re[i] = x;
  }
  return values;
}

export function inverse({ re, im }: Complex): Complex {
  const square = re * re + im * im;
  return { re: re / square, im: -im / square };
}
