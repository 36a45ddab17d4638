import type { BandInPlace } from '../../evaluation/in-place.js';
import { heardShare } from '../../evaluation/in-place.js';
import { frequencyWords } from '../../format/frequency-words.js';

/** "8 of 22", or a dash where the sound has nothing. */
export function shareWords(bands: readonly BandInPlace[]): string {
  const { heard, all } = heardShare(bands);
  return all > 0 ? `${heard} of ${all}` : '–';
}

/** What stays audible of a sound, as one sentence. `where`: "in the club night at 62 dBA". */
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
