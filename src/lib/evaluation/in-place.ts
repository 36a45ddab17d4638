import { bandLevels } from '../listening/band-levels.js';
import { maskedThreshold } from '../listening/masked-threshold.js';
import type { PowerSpectrum } from '../listening/power-spectrum.js';
import { THRESHOLD_ENDS } from '../listening/hearing-threshold.js';
import { thirdOctaveBands, type ThirdOctaveBand, USUAL_RANGE } from '../numeric/third-octave-bands.js';
import type { Decibels } from '../units.js';
import type { Answer } from './answer.js';
import { type InPlace, NOISY, noiseLevels } from './place-noise.js';
import { powerGain } from './power-gain.js';

/** The third octaves for which there is a threshold of hearing. */
export const JUDGED = thirdOctaveBands(USUAL_RANGE.from, THRESHOLD_ENDS);

/** What lies so far below the strongest third octave of a sound is no part of what one knows it by. */
const PART: Decibels = 40;

/** From which level on something in each judged third octave is heard in a place; without one, in silence. */
export function heardFrom(place: InPlace | null): Float64Array {
  const noise = place && noiseLevels(place);
  return maskedThreshold(
    JUDGED,
    JUDGED.map(({ nominal }) => noise?.[NOISY.findIndex((band) => band.nominal === nominal)] ?? -Infinity)
  );
}

/** One third octave of a sound at the listener. */
export interface BandAtListener {
  band: ThirdOctaveBand;
  /** dB re 20 µPa. */
  levelDb: Decibels;
  /** Whether the sound itself, before any mount, has something there. */
  part: boolean;
}

/** And what of it is heard in a place. */
export interface BandInPlace extends BandAtListener {
  heardFromDb: Decibels;
  /** Part of the sound, and loud enough. */
  audible: boolean;
}

/**
 * A sound at the listener in each judged third octave. As `soundLevelDb`: the sound's own rms voltage is the drive, `zeroDb` is what
 * 0 dB of the answer's own speaker is there.
 */
export function bandsAtListener(
  answer: Pick<Answer, 'respond' | 'drive'>,
  { power, binWidth }: Pick<PowerSpectrum, 'power' | 'binWidth'>,
  zeroDb: Decibels
): BandAtListener[] {
  const whole = 10 * Math.log10(power.reduce((a, b) => a + b, 0));
  const own = bandLevels(power, binWidth, JUDGED);
  const through = bandLevels(power, binWidth, JUDGED, powerGain(answer, power.length, binWidth));
  const off = zeroDb - whole - 20 * Math.log10(answer.drive);
  const most = Math.max(...own);
  return JUDGED.map((band, i) => ({ band, levelDb: through[i] + off, part: own[i] > most - PART }));
}

/** Which of them are heard in a place; without one, in silence. */
export function bandsInPlace(bands: readonly BandAtListener[], place: InPlace | null): BandInPlace[] {
  const from = heardFrom(place);
  return bands.map((one, i) => ({
    ...one,
    heardFromDb: from[i],
    audible: one.part && one.levelDb > from[i]
  }));
}

/** How many of the third octaves that are part of a sound are heard. */
export function heardShare(bands: readonly BandInPlace[]): { heard: number; all: number } {
  return {
    heard: bands.filter(({ audible }) => audible).length,
    all: bands.filter(({ part }) => part).length
  };
}
