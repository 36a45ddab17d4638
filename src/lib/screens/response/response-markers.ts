import type { Air } from '../../acoustics/air.js';
import type { Listener } from '../../acoustics/listener.js';
import type { ResponseMarker } from '../../plot/response-curve.js';
import type { Metres } from '../../units.js';
import { lateMarkers } from '../parts/curves/late-markers.js';
import { models } from '../../evaluation/models.js';
import type { Stand } from '../../evaluation/stand.js';
import { frequencyWords } from '../../format/frequency-words.js';
import { FULL } from '../parts/curves/late-words.js';

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
  const late = lateMarkers({ computed }, air, listener, FULL);
  if (late.length > 0) return late;
  const { figures, answer } = computed;
  const all: ResponseMarker[] = [];
  if (figures.corner !== null) {
    const wave = figures.halfWave ? 'the string' : length(Math.round(figures.actsLike! * 1000) / 1000);
    all.push({
      frequency: figures.corner,
      kind: 'half-wave',
      text: `← front and back cancel: half a wave of ${wave}`
    });
  }
  if (figures.quarterWave !== null) {
    const at = frequencyWords(figures.quarterWave);
    all.push({
      frequency: figures.quarterWave,
      kind: 'ring',
      text: models[answer.model].ripples
        ? `a quarter of a wave in the shell, ${at}`
        : `rings here, ${at}: louder than drawn`
    });
  }
  return all;
}
