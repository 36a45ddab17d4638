import type { Lufs } from '../units.js';

const ABSOLUTE_GATE: Lufs = -70;
const RELATIVE_GATE = 10;

/**
 * Loudness of blocks of the K-weighted mean square `powers` (channels already weighted and summed), ITU-R
 * BS.1770-5, Annex 1, equations 4 to 7: −0.691 + 10·log10 of the mean of the blocks above −70 LUFS and above
 * 10 LU below the loudness of those.
 *
 * @returns LUFS; −Infinity if nothing passes the absolute gate
 */
export function gatedLoudness(powers: Float64Array): Lufs {
  const audible = powers.filter((power) => loudnessOf(power) > ABSOLUTE_GATE);
  if (audible.length === 0) return -Infinity;
  const relative = loudnessOf(mean(audible)) - RELATIVE_GATE;
  return loudnessOf(mean(audible.filter((power) => loudnessOf(power) > relative)));
}

function loudnessOf(power: number): Lufs {
  return -0.691 + 10 * Math.log10(power);
}

function mean(values: Float64Array): number {
  return values.reduce((a, b) => a + b, 0) / values.length;
}
