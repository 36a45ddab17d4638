import { complexArray, type ComplexArray } from '../../numeric/complex-array.js';
import type { Kilograms, SquareMetres } from '../../units.js';
import type { Motor } from '../../acoustics/speaker/speaker.js';

/**
 * The cone's acceleration over that of the mid band, Bl·E/(Mms·Re), when a voltage drives the speaker against an acoustic
 * load: jω·v·Mms·Re/(Bl·E) with v = (Bl·E/Re)/(Zm + Bl²/Re + Sd²·Za) and Zm = Rms + jωMmd + 1/(jωCms), Rms = √(Mms/Cms)/Qms
 * (R. H. Small, J. Audio Eng. Soc. 20 (1972) 383, with the load kept apart from the moving mass). Voice-coil inductance is
 * left out. It stands in for the second-order high-pass of the rule of thumb.
 *
 * @param frequency Hz, at least 0
 * @param stiffness jω·Za in Pa/m³, finite at 0 Hz
 * @param airMass the part of Mms that is air, below Mms: `freeAirMass`
 * @throws RangeError if it is not below Mms
 */
export function drivenBy(
  frequency: Float64Array,
  { mms, cms, bl, re, qms }: Motor,
  sd: SquareMetres,
  airMass: Kilograms,
  stiffness: ComplexArray
): ComplexArray {
  const mmd = mms - airMass;
  if (!(mmd > 0))
    throw new RangeError(
      `the moving mass must be above the ${Number((airMass * 1000).toPrecision(3))} g of air that the cone carries, got ${mms * 1000} g`
    );
  const resistance = Math.sqrt(mms / cms) / qms + (bl * bl) / re;
  const out = complexArray(frequency.length);
  for (let i = 0; i < frequency.length; i++) {
    const w = 2 * Math.PI * frequency[i];
    // jω times the mechanical impedance
    const dr = 1 / cms - w * w * mmd + sd * sd * stiffness.re[i];
    const di = w * resistance + sd * sd * stiffness.im[i];
    const scale = (-w * w * mms) / (dr * dr + di * di);
    out.re[i] = scale * dr;
    out.im[i] = -scale * di;
  }
  return out;
}
