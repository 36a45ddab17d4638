import type { Hertz, Seconds } from '../../units.js';

/** The shortest stretch that can be looped. */
export const MIN_STRETCH: Seconds = 0.1;

/**
 * A stretch of a recording made into a loop: its last `crossfade` seconds are blended into its beginning with
 * equal power (cos and sin of the same angle, cos² + sin² = 1), so the loop is that much shorter than the stretch
 * and runs on into itself.
 *
 * @param samples one channel
 * @param startSeconds from where, 0 … duration
 * @param endSeconds to where; ends past the recording are cut to it
 * @param crossfade 0 … half the stretch
 * @throws RangeError for a stretch shorter than 0.1 s, a start outside the recording, a crossfade out of range
 */
export function loopStretch(
  samples: Float32Array,
  sampleRate: Hertz,
  startSeconds: Seconds,
  endSeconds: Seconds,
  crossfade: Seconds = 0.02
): Float32Array {
  const duration = samples.length / sampleRate;
  if (!(startSeconds >= 0 && startSeconds <= duration))
    throw new RangeError(
      `start of the stretch must be within 0 … ${plain(duration)} s, got ${plain(startSeconds)}`
    );
  const stretch = Math.min(endSeconds, duration) - startSeconds;
  if (!(stretch >= MIN_STRETCH - 1e-9))
    throw new RangeError(`a stretch to loop must last at least ${MIN_STRETCH} s, got ${plain(stretch)}`);
  if (!(crossfade >= 0 && crossfade <= stretch / 2))
    throw new RangeError(`crossfade must be within 0 … ${plain(stretch / 2)} s, got ${plain(crossfade)}`);

  const start = Math.round(startSeconds * sampleRate);
  const end = Math.min(samples.length, Math.round((startSeconds + stretch) * sampleRate));
  const overlap = Math.round(crossfade * sampleRate);
  const loop = samples.slice(start, end - overlap);
  for (let i = 0; i < overlap; i++) {
    const angle = ((i + 0.5) / overlap) * (Math.PI / 2);
    loop[i] = Math.sin(angle) * loop[i] + Math.cos(angle) * samples[end - overlap + i];
  }
  return loop;
}

function plain(seconds: Seconds): string {
  return String(Number(seconds.toFixed(3)));
}
