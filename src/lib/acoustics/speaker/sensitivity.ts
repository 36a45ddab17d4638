import type { Decibels } from '../../units.js';
import { airDensity, type Air } from '../air.js';
import { outlineArea } from '../outline.js';
import type { Speaker } from './speaker.js';

/** What sound pressure levels are written against, in Pa (common to all of acoustics; ISO 1683:2015). */
export const REFERENCE_PRESSURE = 20e-6;

/**
 * Half-space sensitivity of the mid band: the sound pressure in Pa (rms) straight in front of the speaker in an endless plate, at
 * 1 m for 1 V (rms) at its terminals, ρ·Sd·Bl/(2π·Mms·Re), far above the resonance and with the coil's inductance left out
 * (R. H. Small, "Direct-Radiator Loudspeaker System Analysis", J. Audio Eng. Soc. 20 (1972) 383).
 *
 * @param speaker one that `checkSpeaker` accepts
 */
export function sensitivity({ motor, cone }: Pick<Speaker, 'motor' | 'cone'>, air: Air): number {
  return (airDensity(air) * outlineArea(cone) * motor.bl) / (2 * Math.PI * motor.mms * motor.re);
}

/** `sensitivity` in dB re 20 µPa. */
export function sensitivityDb(speaker: Pick<Speaker, 'motor' | 'cone'>, air: Air): Decibels {
  return 20 * Math.log10(sensitivity(speaker, air) / REFERENCE_PRESSURE);
}
