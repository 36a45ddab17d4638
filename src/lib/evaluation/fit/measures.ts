import type { Air } from '../../acoustics/air.js';
import { reachesDown } from '../../acoustics/figures/reaches-down.js';
import type { Listener } from '../../acoustics/listener.js';
import type { Response } from '../../acoustics/response.js';
import { sensitivity } from '../../acoustics/speaker/sensitivity.js';
import type { Amplifier } from '../../acoustics/speaker/drive.js';
import type { Lift } from '../../acoustics/speaker/lift.js';
import type { Speaker } from '../../acoustics/speaker/speaker.js';
import { kWeightedPower } from '../../listening/k-weighted-power.js';
import type { PowerSpectrum } from '../../listening/power-spectrum.js';
import type { Strain } from '../../listening/strain.js';
import { thirdOctaveBands } from '../../numeric/third-octave-bands.js';
import type { Decibels, Hertz } from '../../units.js';
import { drivenAnswer, type Answer } from '../answer.js';
import { limitsOf, strainFilters, type Limit } from '../limits.js';
import { powerGain } from '../power-gain.js';
import { zeroAtListenerDb } from '../sound-level.js';
import { PICTURE_GRID } from '../stand.js';

/** One sound that the model makes, as it is measured. */
export interface TriedSound extends Pick<PowerSpectrum, 'power' | 'binWidth'> {
  /** The K-weighting of each bin. */
  weight: Float64Array;
  /** The strain of it as it is, and behind each of these impulse responses (`listening/strain.ts`). */
  strain: (impulseResponses: Float32Array[]) => Promise<{ own: Strain; through: Strain[] }>;
}

/** A sound of which the spectrum is known, ready to be tried with. */
export function triedSound(
  { power, binWidth }: Pick<PowerSpectrum, 'power' | 'binWidth'>,
  sampleRate: Hertz,
  strain: TriedSound['strain']
): TriedSound {
  const weight = kWeightedPower(
    Float64Array.from(power, (_, k) => k * binWidth),
    sampleRate
  );
  return { power, binWidth, weight, strain };
}

/** What all candidates are tried with. */
export interface TriedWith {
  air: Air;
  listener: Listener;
  /** At least one; several count alike. */
  sounds: readonly TriedSound[];
  sampleRate: Hertz;
  /** Volts (rms) of the sound, the same for every one, before it is lifted. */
  volts: number;
  /** What lifts the low end before the amplifier. */
  lift: Lift | null;
  amplifier: Amplifier | null;
  /** The speaker in whose endless plate 0 dB is, where depth is told. */
  against: Pick<Speaker, 'motor' | 'cone'>;
}

/** What is measured of an answer without the sounds' course in time. */
export interface Measures {
  /** How loud the model's sounds are at the listener, K-weighted, in dB re 20 µPa, at the drive of all; far away at 1 m. */
  levelDb: Decibels;
  /** How far down it stays within 10 dB of 0 dB, one level for all; null where it lies lower throughout. */
  reachesDown: Hertz | null;
  /** How far its third octaves from 315 Hz to 2.5 kHz lie from their mean, root mean square. */
  unevennessDb: Decibels;
}

/** The most it gives on these sounds before a limit comes. */
export interface Loudest {
  levelDb: Decibels;
  volts: number;
  limit: Limit;
}

/** Where evenness is judged: above a box's knee and below the end of a draft. */
const EVEN_BANDS = thirdOctaveBands(315, 2500);

/** Frequencies of the bands, evenly within each. */
const PER_BAND = 16;
const EVEN_GRID = Float64Array.from(
  EVEN_BANDS.flatMap(({ lower, upper }) =>
    Array.from({ length: PER_BAND }, (_, i) => lower * (upper / lower) ** ((i + 0.5) / PER_BAND))
  )
);

/** @param own as the model says it: the lift comes in here, as on the shelf (same-drive.ts) */
export function measuresOf(own: Answer, speaker: Speaker, tried: TriedWith): Measures {
  const { air, listener, volts, against, lift } = tried;
  const answer = drivenAnswer(own, { drive: 1, lift });
  const zeroDb = 20 * Math.log10(sensitivity(against, air) / sensitivity(speaker, air));
  return {
    levelDb: zeroAtListenerDb(speaker, air, volts, listener) + 10 * Math.log10(meanThrough(answer, tried)),
    reachesDown: reachesDown(answer.respond(PICTURE_GRID), zeroDb),
    unevennessDb: unevennessDb(answer.respond(EVEN_GRID))
  };
}

/**
 * The K-weighted power of the sounds behind an answer over their own unweighted power, the mean of all sounds: what BS.1770 measures of a steady
 * sound without its gates.
 */
function meanThrough(answer: Answer, { sounds }: TriedWith): number {
  const shares = sounds.map(({ power, binWidth, weight }) => {
    const gain = powerGain(answer, power.length, binWidth);
    let [through, whole] = [0, 0];
    for (let k = 0; k < power.length; k++) {
      through += power[k] * gain[k] * weight[k];
      whole += power[k];
    }
    return whole > 0 ? through / whole : 0;
  });
  return shares.reduce((sum, share) => sum + share, 0) / shares.length;
}

/** @param response on `EVEN_GRID` */
function unevennessDb({ re, im }: Response): Decibels {
  const levels = EVEN_BANDS.map((_, band) => {
    let power = 0;
    for (let k = band * PER_BAND; k < (band + 1) * PER_BAND; k++) power += re[k] ** 2 + im[k] ** 2;
    return 10 * Math.log10(power / PER_BAND);
  });
  const mean = levels.reduce((sum, level) => sum + level, 0) / levels.length;
  return Math.sqrt(levels.reduce((sum, level) => sum + (level - mean) ** 2, 0) / levels.length);
}

/**
 * The highest level within travel, heat and the amplifier's peak on every one of the sounds; null where all are silent.
 *
 * @param levelDb at the drive of all (`measuresOf`)
 */
export async function loudestOf(
  answer: Answer,
  levelDb: Decibels,
  speaker: Speaker,
  { sounds, sampleRate, volts, amplifier, lift }: TriedWith
): Promise<Loudest | null> {
  const { displacement, current, terminals } = strainFilters(answer, sampleRate, lift);
  const cones = displacement.length;
  let least: { limit: Limit; volts: number } | null = null;
  for (const sound of sounds) {
    const filters = [...displacement, ...current, ...(terminals ? [terminals] : [])];
    const { own, through } = await sound.strain(filters);
    const strained = {
      own,
      terminals: terminals ? through[2 * cones] : own,
      displacement: through.slice(0, cones),
      current: through.slice(cones, 2 * cones)
    };
    const first = limitsOf(strained, volts, speaker.motor, amplifier)?.first;
    if (first && (!least || first.volts < least.volts)) least = first;
  }
  return least && { ...least, levelDb: levelDb + 20 * Math.log10(least.volts / volts) };
}
