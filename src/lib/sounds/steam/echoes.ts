import type { Seconds } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import type { Span } from '../blocks/span.js';

/** First reflections from ground and buildings: seconds, gain. */
const REFLECTIONS: [Seconds, number][] = [
  [0.0083, 0.3],
  [0.0191, 0.22],
  [0.0367, -0.2],
  [0.0719, 0.15],
  [0.1293, -0.1],
  [0.2011, 0.07]
];

/** Adds the first reflections, dulled, to a sound in place; in a loop they go round. */
export function addEchoes(sound: Float32Array, span: Span): Float32Array {
  const { length, sampleRate, cyclic } = span;
  const dull = filter(sound, section('lowPass', 2600, 0.6, sampleRate), span);
  for (const [seconds, gain] of REFLECTIONS) {
    const delay = Math.round(seconds * sampleRate);
    for (let i = cyclic ? 0 : delay; i < length; i++)
      sound[i] += gain * dull[i < delay ? (((i - delay) % length) + length) % length : i - delay];
  }
  return sound;
}
