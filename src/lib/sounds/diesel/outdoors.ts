import { addEchoes, type Echo } from '../blocks/add-echoes.js';
import { filter, section } from '../blocks/filter.js';
import type { Span } from '../blocks/span.js';

/** Delays and gains of the first reflections. */
const REFLECTIONS: readonly Echo[] = [
  [0.0061, 0.3],
  [0.0137, -0.2],
  [0.0229, 0.17],
  [0.0383, 0.12],
  [0.0571, -0.08]
];

/**
 * A sound as it is heard out of doors beside the track: with the first reflections of ground, walls and cars, dulled.
 * Between engine and ear there are panels as well: only 0.4 of the treble above 3 kHz comes straight.
 */
export function outdoors(dry: Float32Array, span: Span): Float32Array {
  const { spare } = span;
  const dull = filter(dry, section('lowPass', 3000, 0.6, span.sampleRate), span, 1, spare.take());
  const out = spare.take();
  mix(out, dry, dull);
  addEchoes(out, dull, REFLECTIONS, span);
  spare.giveBack(dull);
  return out;
}

function mix(out: Float32Array, dry: Float32Array, dull: Float32Array): void {
  for (let i = 0; i < out.length; i++) out[i] = 0.4 * dry[i] + 0.6 * dull[i];
}
