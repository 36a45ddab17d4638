import type { Air } from '../../acoustics/air.js';
import { ringPeak } from '../../acoustics/figures/ring-peak.js';
import type { Listener } from '../../acoustics/listener.js';
import type { ResponseMarker } from '../../plot/response-curve.js';
import type { Metres } from '../../units.js';
import { lateMarkers } from '../parts/curves/late-markers.js';
import { models } from '../../evaluation/models.js';
import type { Computed, Stand } from '../../evaluation/stand.js';
import { frequencyWords } from '../../format/frequency-words.js';
import { FULL } from '../parts/curves/late-words.js';

/** Two marks nearer than this share of their frequency are one. */
const SAME_SPOT = 0.03;

/**
 * Frequencies worth a line in the picture of the heard mount: what its wave solution shows of the back, or what the rule of thumb
 * foretells of it.
 *
 * @param length as the user wants lengths written
 */
export function responseMarkers(
  { computed }: Pick<Stand, 'computed'>,
  air: Air,
  listener: Listener,
  length: (metres: Metres) => string
): ResponseMarker[] {
  if (!computed) return [];
  const ring = ringMarker(computed);
  // Over a board there is a third wave: what is foretold of the two does not hold.
  if (listener.board) return ring ? [ring] : [];
  const late = lateMarkers({ computed }, air, listener, FULL);
  // Of a shell the hump is the ring, and that is said of it.
  if (late.length > 0) return ring ? [ring, ...late.filter((mark) => !sameSpot(mark, ring))] : late;
  const { figures } = computed;
  const all: ResponseMarker[] = [];
  if (figures.corner !== null) {
    const wave = figures.halfWave ? 'the string' : length(Math.round(figures.actsLike! * 1000) / 1000);
    all.push({
      frequency: figures.corner,
      kind: 'half-wave',
      text: `← front and back cancel: half a wave of ${wave}`
    });
  }
  return ring ? [...all, ring] : all;
}

/** Where a shell rings: at the top of its curve where the model draws one, else where it is foretold. */
function ringMarker({ figures, answer, response }: Computed): ResponseMarker | null {
  if (figures.ring === null) return null;
  const drawn = models[answer.model].ripples;
  const frequency = drawn ? ringPeak(response, figures.ring, answer.solvedTo) : figures.ring;
  if (frequency === null) return null;
  const at = frequencyWords(frequency);
  return {
    frequency,
    kind: 'ring',
    text: drawn ? `the shell rings here, ${at}` : `rings here, ${at}: louder than drawn`
  };
}

function sameSpot(mark: ResponseMarker, ring: ResponseMarker): boolean {
  return Math.abs(Math.log(mark.frequency / ring.frequency)) < SAME_SPOT;
}
