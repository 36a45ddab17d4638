import type { Seconds } from '../../units.js';
import type { Span } from '../blocks/span.js';

/**
 * Adds a burst of noise, level·noise·e^(−(t/fall))·(1 − e^(−t/rise)), to a signal.
 *
 * @param at when it begins, in samples, a real number; in a loop it goes round
 * @param noise as long as the signal
 */
export function addBurst(
  signal: Float32Array,
  { sampleRate, cyclic }: Pick<Span, 'sampleRate' | 'cyclic'>,
  noise: Float32Array,
  at: number,
  rise: Seconds,
  fall: Seconds,
  level: number
): void {
  const length = signal.length;
  const first = Math.ceil(at);
  const [up, down] = [Math.exp(-1 / (rise * sampleRate)), Math.exp(-1 / (fall * sampleRate))];
  let rising = up ** (first - at);
  let falling = level * down ** (first - at);
  let i = cyclic ? ((first % length) + length) % length : first;
  for (let left = Math.min(length, Math.ceil(10 * fall * sampleRate)); left > 0; left--) {
    if (i >= 0) signal[i] += noise[i] * falling * (1 - rising);
    rising *= up;
    falling *= down;
    if (++i === length) {
      if (!cyclic) return;
      i = 0;
    }
  }
}
