import { addEchoes, type Echo } from '../blocks/add-echoes.js';
import { filter, section } from '../blocks/filter.js';
import type { Span } from '../blocks/span.js';

/** First reflections from ground and buildings: seconds, gain. */
const REFLECTIONS: readonly Echo[] = [
  [0.0083, 0.3],
  [0.0191, 0.22],
  [0.0367, -0.2],
  [0.0719, 0.15],
  [0.1293, -0.1],
  [0.2011, 0.07]
];

/** A sound with its first reflections, dulled, added to it in place; in a loop they go round. */
export function withEchoes(sound: Float32Array, span: Span): Float32Array {
  addEchoes(sound, filter(sound, section('lowPass', 2600, 0.6, span.sampleRate), span), REFLECTIONS, span);
  return sound;
}
