import { aWeightedLevel } from '../listening/a-weighting.js';
import { thirdOctaveBands } from '../numeric/third-octave-bands.js';
import { PLACE_BANDS, placeNoise, type PlaceKind } from '../sounds/places/place-spectra.js';
import type { Decibels } from '../units.js';

/** A place and how loud it is there, A-weighted. */
export interface InPlace {
  kind: PlaceKind;
  levelDb: Decibels;
}

/** The third octaves in which the noise of a place has anything. */
export const NOISY = thirdOctaveBands(PLACE_BANDS.from, PLACE_BANDS.to);

/** Level of the noise in each third octave of `PLACE_BANDS`, dB re 20 µPa. */
export function noiseLevels({ kind, levelDb }: InPlace): Decibels[] {
  const { spectrumDb } = placeNoise(kind);
  const off = levelDb - aWeightedLevel(NOISY, spectrumDb);
  return spectrumDb.map((level) => level + off);
}

/** Level of the noise as a whole, not weighted, dB re 20 µPa: what its generated samples, all bands of it, are played at. */
export function noiseLevelDb(place: InPlace): Decibels {
  return 10 * Math.log10(noiseLevels(place).reduce((sum, level) => sum + 10 ** (level / 10), 0));
}

/** RMS of the samples that `renderPlaceNoise` makes, against full scale. */
const NOISE_RMS: Decibels = -20;

/**
 * The factor by which the samples of a noise are played beside the mounts, so that it has its level against theirs. A mount plays its
 * loop behind its filter over `most`, the drive of the most sensitive speaker (`Branches`); behind a response of 0 dB that is
 * `zeroDb` at the listener, of the speaker that levels are written against.
 *
 * @param noiseDb level of the noise at the listener, dB re 20 µPa, not weighted
 * @param meanSquare of the loop that plays, above 0
 */
export function noiseGain(noiseDb: Decibels, zeroDb: Decibels, meanSquare: number, most: number): number {
  const loopDb = 10 * Math.log10(meanSquare) - 20 * Math.log10(most);
  return 10 ** ((noiseDb - zeroDb + loopDb - NOISE_RMS) / 20);
}
