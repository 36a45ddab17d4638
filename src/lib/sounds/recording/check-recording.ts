import type { Hertz, Seconds } from '../../units.js';

/** Largest file that is opened at all. */
export const MAX_FILE_BYTES = 200e6;
/** Longest recording that is decoded. */
export const MAX_DURATION: Seconds = 600;
/** Longest stretch of a recording that plays as a loop. */
export const MAX_STRETCH: Seconds = 60;

/** Peaks below this are silence (−100 dBFS, under the last bit of 16-bit audio). */
const SILENCE = 1e-5;

/** What is wrong with a recording of this duration, as one sentence, or null: asked before it is decoded. */
export function checkDuration(seconds: Seconds): string | null {
  if (!(seconds > 0)) return 'This recording is empty.';
  if (seconds > MAX_DURATION)
    return `This recording is too long: ${Math.ceil(seconds / 60)} minutes, at most ${MAX_DURATION / 60} can be opened.`;
  return null;
}

/**
 * What is wrong with decoded channels (one array a channel, full scale ±1), as one sentence, or null: empty, too
 * long, holding values that are no numbers, silent (peak below −100 dBFS).
 */
export function checkRecording(channels: Float32Array[], sampleRate: Hertz): string | null {
  const length = channels.length ? channels[0].length : 0;
  const wrong = checkDuration(length / sampleRate);
  if (wrong) return wrong;
  let peak = 0;
  for (const channel of channels) {
    for (let i = 0; i < channel.length; i++) {
      const size = Math.abs(channel[i]);
      if (!(size < Infinity)) return 'This recording is damaged: it holds values that are not numbers.';
      if (size > peak) peak = size;
    }
  }
  return peak < SILENCE ? 'This recording is silent.' : null;
}
