import type { Complex } from '../../numeric/complex.js';
import type { Hertz, KilogramsPerCubicMetre, Metres } from '../../units.js';

/** Viscosity of air at 20 °C, in Pa·s (from memory; it changes by 2 % in 10 °C, which is left out). */
export const VISCOSITY = 1.81e-5;

/** A slit: its gap, its length across the flow and its depth along it. */
export interface Slit {
  gap: Metres;
  length: Metres;
  depth: Metres;
}

/** A round hole: its diameter, and its depth along the flow. */
export interface Hole {
  diameter: Metres;
  depth: Metres;
}

/** A wave e^{jωt} that dies away by e^{−δωt}; δ is 0 unless told. */
export interface Swing {
  frequency: Hertz;
  damping?: number;
}

/**
 * Pressure over volume velocity of a slit, without its ends: jωρ·t/(g·ℓ·(1 − tanh x/x)), x = (g/2)·√(jωρ/η), in Pa·s/m³ (viscous
 * flow between planes, any handbook of acoustics; from memory). Low limit 12·η·t/(g³·ℓ) + j(6/5)·ωρt/(gℓ).
 *
 * @param frequency above 0
 */
export function slitImpedance(slit: Slit, frequency: Hertz, density: KilogramsPerCubicMetre): Complex {
  return impedance(slitInertance(slit, { frequency }, density), frequency, density);
}

/**
 * The same of a round hole: jωρ·t/(π(d/2)²·(1 − 2·J1(s)/(s·J0(s)))), s = (d/2)·√(−jωρ/η) (I. B. Crandall 1926, from memory). Low limit
 * 128·η·t/(πd⁴) + j(4/3)·ωρt/(π(d/2)²).
 *
 * @param frequency above 0
 */
export function holeImpedance(hole: Hole, frequency: Hertz, density: KilogramsPerCubicMetre): Complex {
  return impedance(holeInertance(hole, { frequency }, density), frequency, density);
}

/** `slitImpedance` over jωρ, in 1/m: without friction depth over area. */
export function slitInertance(
  { gap, length, depth }: Slit,
  swing: Swing,
  density: KilogramsPerCubicMetre
): Complex {
  const { re, im } = slitShare(layers(gap / 2, swing, density));
  return over({ re: depth / (gap * length), im: 0 }, { re, im });
}

/** `holeImpedance` over jωρ, in 1/m. */
export function holeInertance(
  { diameter, depth }: Hole,
  swing: Swing,
  density: KilogramsPerCubicMetre
): Complex {
  const { re, im } = layers(diameter / 2, swing, density);
  // √(−jω) is −j·√(jω)
  const share = holeShare({ re: im, im: -re });
  return over({ re: (4 * depth) / (Math.PI * diameter * diameter), im: 0 }, share);
}

/** Half a gap in thicknesses of the viscous layer: half·√(jωρ/η), jω = ω·(δ + j). */
function layers(half: Metres, { frequency, damping = 0 }: Swing, density: KilogramsPerCubicMetre): Complex {
  const size = half * Math.sqrt((2 * Math.PI * frequency * density * Math.hypot(1, damping)) / VISCOSITY);
  const angle = Math.atan2(1, damping) / 2;
  return { re: size * Math.cos(angle), im: size * Math.sin(angle) };
}

function impedance({ re, im }: Complex, frequency: Hertz, density: KilogramsPerCubicMetre): Complex {
  const omegaRho = 2 * Math.PI * frequency * density;
  return { re: -omegaRho * im, im: omegaRho * re };
}

/** 1 − tanh x/x; by its series where both are nearly alike. */
function slitShare(x: Complex): Complex {
  const square = times(x, x);
  if (Math.hypot(x.re, x.im) < 0.2)
    return series(square, [1 / 3, -2 / 15, 17 / 315, -62 / 2835, 1382 / 155925]);
  const decay = Math.exp(-2 * x.re);
  const e = { re: decay * Math.cos(2 * x.im), im: -decay * Math.sin(2 * x.im) };
  const tanh = over({ re: 1 - e.re, im: -e.im }, { re: 1 + e.re, im: e.im });
  const ratio = over(tanh, x);
  return { re: 1 - ratio.re, im: -ratio.im };
}

/** 1 − 2·J1(s)/(s·J0(s)), the ratio of the Bessel functions by its continued fraction from behind. */
function holeShare(s: Complex): Complex {
  const size = Math.hypot(s.re, s.im);
  if (size < 0.2) return series(times(s, s), [-1 / 8, -1 / 48, -11 / 3072, -19 / 30720]);
  let ratio: Complex = { re: 0, im: 0 };
  for (let n = Math.ceil(size) + 40; n > 0; n--) {
    const { re, im } = over({ re: 2 * n, im: 0 }, s);
    ratio = over({ re: 1, im: 0 }, { re: re - ratio.re, im: im - ratio.im });
  }
  const share = over(ratio, s);
  return { re: 1 - 2 * share.re, im: -2 * share.im };
}

/** Σ c_n·z^n, n from 1. */
function series(z: Complex, coefficients: readonly number[]): Complex {
  let sum: Complex = { re: 0, im: 0 };
  for (const c of coefficients.toReversed()) sum = times(z, { re: c + sum.re, im: sum.im });
  return sum;
}

function times(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

function over(a: Complex, b: Complex): Complex {
  const square = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / square, im: (a.im * b.re - a.re * b.im) / square };
}
