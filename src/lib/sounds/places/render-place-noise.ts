import { thirdOctaveBands } from '../../numeric/third-octave-bands.js';
import type { Hertz, Seconds } from '../../units.js';
import { loopLength, noiseLoop } from '../test-signals/noise-loop.js';
import { PLACE_BANDS, placeNoise, type PlaceKind } from './place-spectra.js';

const DURATION: Seconds = 5;
const SEED = 1994;

/**
 * A seamless loop of about five seconds of the noise of a place: every third octave has its level against the others to within what its
 * number of spectral lines rounds to, evenly over its width; nothing outside; RMS −20 dBFS (0.1). It is steady: the rise and fall
 * of voices is left out.
 *
 * @throws RangeError for a sample rate out of range, a place that is not known
 */
export function renderPlaceNoise(kind: PlaceKind, sampleRate: Hertz): Float32Array {
  const { spectrumDb } = placeNoise(kind);
  const bands = thirdOctaveBands(PLACE_BANDS.from, PLACE_BANDS.to);
  const binWidth = sampleRate / loopLength(DURATION, sampleRate);
  // As many lines as lie in a band share its power.
  const density = bands.map(({ lower, upper }, i) => {
    const lines = Math.ceil(upper / binWidth) - Math.ceil(lower / binWidth);
    return 10 ** (spectrumDb[i] / 10) / lines;
  });
  return noiseLoop(DURATION, sampleRate, SEED, (k) => {
    const band = bands.findIndex(({ lower, upper }) => k * binWidth >= lower && k * binWidth < upper);
    return band < 0 ? 0 : density[band];
  });
}
