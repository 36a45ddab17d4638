import type { Air } from '../../acoustics/air.js';
import type { Listener } from '../../acoustics/listener.js';
import type { ResponseMarker } from '../../plot/response-curve.js';
import type { Metres } from '../../units.js';
import { lateMarkers } from '../parts/curves/late-markers.js';
import { models } from '../../evaluation/models.js';
import type { Stand } from '../../evaluation/stand.js';
import { FULL } from '../parts/curves/late-words.js';
import { ringMarker, withRing } from '../parts/curves/ring-marker.js';

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
  const { figures, answer } = computed;
  // Where front and back begin to cancel by the rule's one bend, a curve with a hump shows that they add.
  if (models[answer.model].ripples) return withRing(lateMarkers({ computed }, air, listener, FULL), ring);
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
