import type { Seconds } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import type { Span } from '../blocks/span.js';

/** Delays and gains of the first reflections. */
const REFLECTIONS: [Seconds, number][] = [
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
  const { length, sampleRate, cyclic } = span;
  const dull = filter(dry, section('lowPass', 3000, 0.6, sampleRate), span);
  const out = new Float32Array(length);
  const [a, b, c, d, e] = REFLECTIONS.map(([seconds]) => Math.round(seconds * sampleRate));
  const [ga, gb, gc, gd, ge] = REFLECTIONS.map(([, gain]) => gain);
  const before = (i: number) => (cyclic ? dull[((i % length) + length) % length] : (dull[i] ?? 0));
  const first = Math.min(e, length);
  for (let i = 0; i < first; i++)
    out[i] =
      ga * before(i - a) + gb * before(i - b) + gc * before(i - c) + gd * before(i - d) + ge * before(i - e);
  for (let i = first; i < length; i++)
    out[i] = ga * dull[i - a] + gb * dull[i - b] + gc * dull[i - c] + gd * dull[i - d] + ge * dull[i - e];
  for (let i = 0; i < length; i++) out[i] += 0.4 * dry[i] + 0.6 * dull[i];
  return out;
}
