import type { Hertz } from '../../units.js';

/** What sounds and filters are made for unless the audio device refuses it (docs/decisions/0007). */
export const USUAL_RATE: Hertz = 48000;

/**
 * The sample rate itself, if sounds can be rendered at it.
 * @throws RangeError outside 8 … 192 kHz.
 */
export function validSampleRate(sampleRate: Hertz): Hertz {
  if (!(sampleRate >= 8000 && sampleRate <= 192000))
    throw new RangeError(`sample rate must be within 8000 … 192000 Hz, got ${sampleRate}`);
  return sampleRate;
}
