import type { Decibels, Hertz } from '../units.js';

/** T_f of ISO 226:2003, table 1, from 20 Hz in third octaves to 12.5 kHz, as many public programs print it. */
const FIRST_BAND = -17;
const THRESHOLD: readonly Decibels[] = [
  78.5, 68.7, 59.5, 51.1, 44.0, 37.5, 31.5, 26.5, 22.1, 17.9, 14.4, 11.4, 8.6, 6.2, 4.4, 3.0, 2.2, 2.4, 3.5,
  1.7, -1.3, -4.2, -6.0, -5.4, -1.5, 6.0, 12.6, 13.9, 12.3
];

/** The highest frequency of the standard; above it nothing is said. */
export const THRESHOLD_ENDS: Hertz = 12_500;

/**
 * The threshold of hearing for tones in a free field, heard with both ears by otologically normal persons of 18 to 25 years, in dB re
 * 20 µPa (ISO 226:2003, table 1; linear over the logarithm of the frequency between its values). Half of all hear less well than
 * that, and most listeners are older: above some kilohertz by a great deal.
 *
 * @param frequency 20 Hz … 12.6 kHz, the middle of the third octave called 12.5 kHz
 * @throws RangeError outside that
 */
export function hearingThresholdDb(frequency: Hertz): Decibels {
  const place = 10 * Math.log10(frequency / 1000) - FIRST_BAND;
  const last = THRESHOLD.length - 1;
  if (!(place >= -0.05 && place <= last + 0.05))
    throw new RangeError(`frequency must be within 20 … ${THRESHOLD_ENDS} Hz, got ${frequency}`);
  const from = Math.min(last - 1, Math.max(0, Math.floor(place)));
  return THRESHOLD[from] + (THRESHOLD[from + 1] - THRESHOLD[from]) * (place - from);
}
