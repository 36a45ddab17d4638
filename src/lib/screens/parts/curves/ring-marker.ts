import { ringPeak } from '../../../acoustics/figures/ring-peak.js';
import type { ResponseMarker } from '../../../plot/response-curve.js';
import { takenOut } from '../../../evaluation/answer.js';
import { models } from '../../../evaluation/models.js';
import type { Computed } from '../../../evaluation/stand.js';
import { frequencyWords } from '../../../format/frequency-words.js';
import type { Hertz } from '../../../units.js';

/** Two marks nearer than this share of their frequency are one. */
const SAME_SPOT = 0.03;

/** Where a shell rings: at the top of its curve where the model draws one, else where it is foretold. */
export function ringOf({ figures, answer, response }: Computed): Hertz | null {
  if (figures.ring === null || !models[answer.model].ripples) return figures.ring;
  return ringPeak(takenOut(response, answer), figures.ring, answer.solvedTo);
}

/** The mark of that. */
export function ringMarker(computed: Computed): ResponseMarker | null {
  const frequency = ringOf(computed);
  if (frequency === null) return null;
  return {
    frequency,
    kind: 'ring',
    text: models[computed.answer.model].ripples
      ? `the shell rings here, ${frequencyWords(frequency)}`
      : 'rings here: louder than drawn'
  };
}

/** The marks of the back with that of the ring before them: of a shell the hump is the ring, and that is said of it. */
export function withRing(late: readonly ResponseMarker[], ring: ResponseMarker | null): ResponseMarker[] {
  return ring ? [ring, ...late.filter((mark) => !sameSpot(mark, ring))] : [...late];
}

function sameSpot(mark: ResponseMarker, ring: ResponseMarker): boolean {
  return Math.abs(Math.log(mark.frequency / ring.frequency)) < SAME_SPOT;
}
