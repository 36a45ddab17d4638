import { type BandInPlace, heardShare } from '../../evaluation/in-place.js';
import type { InPlace } from '../../evaluation/place-noise.js';
import { frequencyWords } from '../../format/frequency-words.js';
import { type PlaceKind, placeNoise } from '../../sounds/places/place-spectra.js';

/** "8 of 22", or a dash where the sound has nothing. */
export function shareWords(bands: readonly BandInPlace[]): string {
  const { heard, all } = heardShare(bands);
  return all > 0 ? `${heard} of ${all}` : '–';
}

/** "in the noise of the club night, 62 dBA". */
export function whereWords(place: InPlace | null): string {
  return place
    ? `in the noise of ${OF_A[place.kind]} ${placeNoise(place.kind).name}, ${place.levelDb} dBA`
    : 'in silence';
}

const OF_A: Readonly<Record<PlaceKind, 'a' | 'the'>> = {
  quietRoom: 'a',
  clubNight: 'the',
  exhibitionHall: 'the'
};

/** What is taken for the noise of a place, and where its usual level comes from. */
export function noiseWords(kind: PlaceKind): string {
  const { spectrum, level } = TAKEN[kind];
  return `${spectrum} Usual here: ${placeNoise(kind).usualDb} dBA${level}.`;
}

const SPEECH = 'The noise has the long-term spectrum of speech.';
const TAKEN: Readonly<Record<PlaceKind, { spectrum: string; level: string }>> = {
  quietRoom: { spectrum: 'The noise falls by 5 dB an octave, as ventilation does.', level: '' },
  clubNight: { spectrum: SPEECH, level: ', an assumption' },
  exhibitionHall: {
    spectrum: SPEECH,
    level: ', taken from restaurants; none was found for exhibition halls'
  }
};

/** What stays audible of a sound, as one sentence. `where`: as `whereWords` says it. */
export function audibleWords(bands: readonly BandInPlace[], sound: string, where: string): string {
  const { heard, all } = heardShare(bands);
  if (all === 0) return 'There is no sound.';
  if (heard === 0) return `Nothing of the ${sound} is heard ${where}.`;
  if (heard === all) return `All ${all} third octaves of the ${sound} are heard ${where}.`;
  return `${heard} of ${all} third octaves of the ${sound} are heard ${where}: ${runs(bands).join(', ')}.`;
}

/** Neighbours that are heard, from the first to the last; what is no part of the sound does not part them. */
function runs(bands: readonly BandInPlace[]): string[] {
  const found: BandInPlace[][] = [];
  let open = false;
  for (const band of bands.filter(({ part }) => part)) {
    if (band.audible && open) found[found.length - 1].push(band);
    else if (band.audible) found.push([band]);
    open = band.audible;
  }
  return found.map((run) => {
    const [first, last] = [run[0].band.nominal, run[run.length - 1].band.nominal];
    return first === last
      ? `at ${frequencyWords(first)}`
      : `${frequencyWords(first)} to ${frequencyWords(last)}`;
  });
}
