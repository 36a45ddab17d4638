import { complexArray, type ComplexArray } from '../../numeric/complex-array.js';
import type { Kilograms, SquareMetres } from '../../units.js';
import type { Motor } from './speaker.js';

/** How a second speaker of the same kind is connected: with the first one across the same voltage, or one after the other. */
export interface Wiring {
  wiring: 'parallel' | 'series';
  /** Its terminals changed over: it moves back while the first moves forth. */
  reversed: boolean;
}

/** What a voltage moves. */
export interface DrivenCones {
  /** Hz. */
  frequency: Float64Array;
  motor: Motor;
  /** Null for a single speaker. */
  wiring: Wiring | null;
  /** Displacement of each cone for 1 V at the terminals, in m/V; to the front is positive. */
  displacement: ComplexArray[];
}

/**
 * One speaker or two equal ones, driven by a voltage against their acoustic load: with the displacements x,
 *
 *     (1/Cms − ω²·Mmd + jω·Rms)·x_i + Sd²·Σ_j jωZ_ij·x_j = p_i·Bl·I_i,   E_i = Re·I_i + p_i·Bl·jω·x_i
 *
 * with Rms = √(Mms/Cms)/Qms, p = −1 for one that is reversed; in parallel E_i = E each, in series one current and ΣE_i = E
 * (R. H. Small, J. Audio Eng. Soc. 20 (1972) 383, with the load kept apart from the moving mass). The inductance of the coils is left out.
 *
 * @param frequency Hz, at least 0
 * @param sd area of a cone
 * @param airMass the part of Mms that is air, 0 or more, below Mms; what of the load stands in for it is in the stiffnesses
 * @param stiffness jω·Z_ij in Pa/m³, finite at 0 Hz: Z_11 of a single speaker; Z_11, Z_12, Z_22 of two
 * @throws RangeError if the air is not below Mms
 */
export function drivenCones(
  frequency: Float64Array,
  motor: Motor,
  sd: SquareMetres,
  airMass: Kilograms,
  stiffness: readonly ComplexArray[],
  wiring: Wiring | null = null
): DrivenCones {
  const { mms, cms, bl, re, qms } = motor;
  const mmd = mms - airMass;
  if (!(mmd > 0))
    throw new RangeError(
      `the moving mass must be above the ${Number((airMass * 1000).toPrecision(3))} g of air that the cone carries, got ${mms * 1000} g`
    );
  const friction = Math.sqrt(mms / cms) / qms;
  const brake = (bl * bl) / re;
  const own = wiring?.wiring === 'series' ? brake / 2 : brake;
  const between = wiring?.wiring === 'series' ? (wiring.reversed ? -own : own) : 0;
  const force = (wiring?.wiring === 'series' ? 0.5 : 1) * (bl / re);
  const displacement = Array.from({ length: wiring ? 2 : 1 }, () => complexArray(frequency.length));
  const square = sd * sd;
  for (let i = 0; i < frequency.length; i++) {
    const w = 2 * Math.PI * frequency[i];
    const real = 1 / cms - w * w * mmd;
    const imaginary = w * (friction + own);
    const a = [real + square * stiffness[0].re[i], imaginary + square * stiffness[0].im[i]] as const;
    if (!wiring) {
      const size = force / (a[0] * a[0] + a[1] * a[1]);
      displacement[0].re[i] = size * a[0];
      displacement[0].im[i] = -size * a[1];
      continue;
    }
    const b = [square * stiffness[1].re[i], square * stiffness[1].im[i] + w * between] as const;
    const d = [real + square * stiffness[2].re[i], imaginary + square * stiffness[2].im[i]] as const;
    const p = wiring.reversed ? -1 : 1;
    // Cramer: x1 = (d − p·b)·F/det, x2 = (p·a − b)·F/det
    const det = [
      a[0] * d[0] - a[1] * d[1] - (b[0] * b[0] - b[1] * b[1]),
      a[0] * d[1] + a[1] * d[0] - 2 * b[0] * b[1]
    ] as const;
    const size = force / (det[0] * det[0] + det[1] * det[1]);
    const over = ([x, y]: readonly [number, number], to: ComplexArray) => {
      to.re[i] = size * (x * det[0] + y * det[1]);
      to.im[i] = size * (y * det[0] - x * det[1]);
    };
    over([d[0] - p * b[0], d[1] - p * b[1]], displacement[0]);
    over([p * a[0] - b[0], p * a[1] - b[1]], displacement[1]);
  }
  return { frequency, motor, wiring, displacement };
}

/** Each cone's acceleration over that of the mid band of one speaker at the same voltage, Bl·E/(Mms·Re). */
export function accelerations({ frequency, motor, displacement }: DrivenCones): ComplexArray[] {
  const midBand = motor.bl / (motor.mms * motor.re);
  return displacement.map(({ re, im }) => {
    const out = complexArray(frequency.length);
    for (let i = 0; i < frequency.length; i++) {
      const scale = -((2 * Math.PI * frequency[i]) ** 2) / midBand;
      out.re[i] = scale * re[i];
      out.im[i] = scale * im[i];
    }
    return out;
  });
}

/** The current through each coil for 1 V at the terminals, in A/V. */
export function coilCurrents({
  frequency,
  motor: { bl, re },
  wiring,
  displacement
}: DrivenCones): ComplexArray[] {
  const p = displacement.map((_, k) => (k > 0 && wiring?.reversed ? -1 : 1));
  const series = wiring?.wiring === 'series';
  return displacement.map((_, k) => {
    const out = complexArray(frequency.length);
    for (let i = 0; i < frequency.length; i++) {
      const w = 2 * Math.PI * frequency[i];
      let [back, behind] = [0, 0];
      displacement.forEach((x, j) => {
        if (!series && j !== k) return;
        back += -p[j] * bl * w * x.im[i];
        behind += p[j] * bl * w * x.re[i];
      });
      const resistance = series ? 2 * re : re;
      out.re[i] = (1 - back) / resistance;
      out.im[i] = -behind / resistance;
    }
    return out;
  });
}

/** What the amplifier sees, in Ω. */
export function electricalImpedance(driven: DrivenCones): ComplexArray {
  const currents = coilCurrents(driven);
  const taken = driven.wiring?.wiring === 'series' ? currents.slice(0, 1) : currents;
  const out = complexArray(driven.frequency.length);
  for (let i = 0; i < driven.frequency.length; i++) {
    let [re, im] = [0, 0];
    for (const current of taken) [re, im] = [re + current.re[i], im + current.im[i]];
    const size = re * re + im * im;
    out.re[i] = re / size;
    out.im[i] = -im / size;
  }
  return out;
}
