import type { CubicMetres, Hertz, SquareMetres } from '../../units.js';
import { airDensity, soundSpeed, type Air } from '../air.js';
import type { Motor } from './speaker.js';

/** Small-signal figures that follow from the motor values. */
export interface MotorFigures {
  /** Resonance in free air. */
  fs: Hertz;
  /** Electrical quality factor at fs. */
  qes: number;
  /** Total quality factor at fs, fed from a source without resistance. */
  qts: number;
  /** Volume of air as compliant as the suspension. */
  vas: CubicMetres;
  /** Area of the cone. */
  sd: SquareMetres;
}

/**
 * fs = 1/(2π·√(Mms·Cms)), Qes = 2π·fs·Mms·Re/Bl², 1/Qts = 1/Qms + 1/Qes, Vas = ρ·c²·Sd²·Cms
 * (R. H. Small, "Direct-Radiator Loudspeaker System Analysis", J. Audio Eng. Soc. 20 (1972) 383). The
 * inductance of the voice coil is left out.
 *
 * @param sd area of the cone in m², above 0; all motor values above 0
 */
export function motorFigures(motor: Motor, sd: SquareMetres, air: Air): MotorFigures {
  const fs = 1 / (2 * Math.PI * Math.sqrt(motor.mms * motor.cms));
  const qes = (2 * Math.PI * fs * motor.mms * motor.re) / (motor.bl * motor.bl);
  const qts = 1 / (1 / motor.qms + 1 / qes);
  const vas = airDensity(air) * soundSpeed(air) ** 2 * sd * sd * motor.cms;
  return { fs, qes, qts, vas, sd };
}
