import type { Seconds } from '../../units.js';
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
    for (let i = delay; i < length; i++) sum[i] += gain * signal[i - delay];
    if (!cyclic) continue;
    for (let i = 0, from = length - (delay % length); i < Math.min(delay, length); i++, from++)
      sum[i] += gain * signal[from % length];
  }
}
