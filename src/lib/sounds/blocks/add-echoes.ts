import type { Seconds } from '../../units.js';
import { addScaled } from './add-scaled.js';
import type { Span } from './span.js';

/** An echo: when it comes after the sound, and its gain. */
export type Echo = readonly [delay: Seconds, gain: number];

/** Adds echoes of a signal to a sum of the same length; in a loop they go round. */
export function addEchoes(
  sum: Float32Array,
  signal: Float32Array,
  echoes: readonly Echo[],
  { sampleRate, cyclic }: Pick<Span, 'sampleRate' | 'cyclic'>
): void {
  const { length } = signal;
  for (const [seconds, gain] of echoes) {
    const delay = Math.round(seconds * sampleRate);
    if (delay < length) addScaled(sum.subarray(delay), signal, gain);
    if (!cyclic) continue;
    // Of a delay longer than the loop what is over whole turns, and the loop from its beginning behind it.
    const end = Math.min(delay, length);
    const late = delay % length;
    addScaled(sum.subarray(0, end), signal.subarray(length - late), gain);
    if (late < end) addScaled(sum.subarray(late, end), signal, gain);
  }
}
