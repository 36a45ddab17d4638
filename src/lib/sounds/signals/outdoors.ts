import type { Seconds } from '../../units.js';
import { addEchoes, type Echo } from '../blocks/add-echoes.js';
import { filter, section } from '../blocks/filter.js';
import { random } from '../blocks/random.js';
import type { Span } from '../blocks/span.js';

/** First reflections from ground, track and walls: when they arrive and how strong. */
const EARLY: readonly Echo[] = [
  [0.0031, 0.32],
  [0.0127, -0.2],
  [0.0293, 0.15],
  [0.0471, -0.13],
  [0.0834, 0.11]
];
/** After them scattered ones, falling by 60 dB in `decay`. */
const SCATTERED = { count: 70, from: 0.1, until: 0.75, decay: 1.3, level: 0.05 };
/** A place to hear signals in: always the same one. */
const PLACE = 4242;

/** All of a sound has been heard this long after it was made. */
export const OUTDOORS: Seconds = SCATTERED.until;

/**
 * A sound as it is heard in the open, some way off: with a few early reflections and a faint scattered tail of 0.75 s,
 * both dulled above 2.2 kHz, and without anything much below 30 Hz. A fixed sparse echo pattern: it changes no pitch and no rate.
 */
export function outdoors(signal: Float32Array, span: Pick<Span, 'sampleRate' | 'cyclic'>): Float32Array {
  const { sampleRate } = span;
  const heard = filter(signal, section('highPass', 30, 0.7, sampleRate), span);
  const dulled = filter(heard, section('lowPass', 2200, 0.6, sampleRate), span);
  addEchoes(heard, dulled, reflections(), span);
  return heard;
}

function reflections(): Echo[] {
  const chance = random(PLACE);
  const { count, from, until, decay, level } = SCATTERED;
  const scattered = Array.from({ length: count }, (_, n): Echo => {
    const time = from + ((n + chance.uniform()) * (until - from)) / count;
    return [time, (chance.uniform() < 0.5 ? -level : level) * 10 ** ((-3 * time) / decay)];
  });
  return [...EARLY, ...scattered];
}
