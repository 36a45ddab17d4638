import type { Hertz } from '../units.js';
import { loopLoudness } from './loudness.js';
import { peak } from './peak.js';
import { powerSpectrum } from './power-spectrum.js';
import type { SoundFigures } from './sound-figures.js';

/**
 * Loudness (ITU-R BS.1770-5, see `loopLoudness`), largest sample and average power spectrum (see `powerSpectrum`)
 * of one channel that repeats for ever.
 *
 * @throws RangeError for an empty loop, a sample rate outside 8 … 192 kHz
 */
export function measureSound(samples: Float32Array, sampleRate: Hertz): SoundFigures {
  return {
    loudness: loopLoudness(samples, sampleRate),
    peak: peak(samples),
    ...powerSpectrum(samples, sampleRate)
  };
}
