import type { Decibels } from '../../units.js';

/** Where it will run, by the noise that is there. */
export const PLACE_KINDS = ['quietRoom', 'clubNight', 'exhibitionHall'] as const;
export type PlaceKind = (typeof PLACE_KINDS)[number];

/** A-weighted levels that a place may have, dB re 20 µPa. */
export const PLACE_LEVEL = [10, 100] as const;

/** Nominal ends of the third octaves in which the noise of a place has anything. */
export const PLACE_BANDS = { from: 63, to: 16_000 } as const;

/**
 * Speech of many languages and both sexes on average, in third octaves from 63 Hz to 16 kHz, 70 dB in all (D. Byrne et al., J. Acoust.
 * Soc. Am. 96 (1994) 2108, table II, as many public programs print it). It is of ordinary effort: who speaks up in a noisy hall has
 * more between 1 and 3 kHz.
 */
const SPEECH: readonly Decibels[] = [
  38.6, 43.5, 54.4, 57.7, 56.8, 60.2, 60.3, 59.0, 62.1, 62.1, 60.5, 56.8, 53.7, 53.0, 52.0, 48.7, 48.1, 46.8,
  45.6, 44.5, 44.3, 43.7, 43.4, 41.3, 40.7
];

/** A room with nobody in it: 5 dB less each octave, the neutral curve by which ventilation is judged (common practice). */
const VENTILATION: readonly Decibels[] = SPEECH.map((_, i) => (-5 / 3) * i);

/** What is taken for each place. Levels are A-weighted and may be changed by the user. */
export interface PlaceNoise {
  kind: PlaceKind;
  name: string;
  /** Third-octave levels over `PLACE_BANDS`, only against each other. */
  spectrumDb: readonly Decibels[];
  /** dBA, unless the user says another. */
  usualDb: Decibels;
}

/**
 * Homes have 30 to 35 dBA; restaurants 67 to 83, 74 on average (W. M. To and A. Chung, Noise Health 17 (2015) 428; from memory).
 * No spectrum and no level of an exhibition hall was found: it is taken like a restaurant, and a club night between the two.
 */
export const PLACE_NOISES: readonly PlaceNoise[] = [
  { kind: 'quietRoom', name: 'quiet room', spectrumDb: VENTILATION, usualDb: 32 },
  { kind: 'clubNight', name: 'club night', spectrumDb: SPEECH, usualDb: 62 },
  { kind: 'exhibitionHall', name: 'exhibition hall', spectrumDb: SPEECH, usualDb: 74 }
];

/** @throws RangeError for a kind that is not among them */
export function placeNoise(kind: PlaceKind): PlaceNoise {
  const noise = PLACE_NOISES.find((one) => one.kind === kind);
  if (!noise)
    throw new RangeError(
      `a place must be ${PLACE_NOISES.map((one) => one.kind).join(' or ')}, got ${String(kind)}`
    );
  return noise;
}
