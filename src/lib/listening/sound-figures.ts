import type { Hertz, Lufs } from '../units.js';

/** What is known of a sound before it goes through any mount. */
export interface SoundFigures {
  /** BS.1770-5 integrated loudness of the loop; −Infinity for silence. */
  loudness: Lufs;
  /** Largest absolute sample. */
  peak: number;
  /** Long-term power spectrum (mean square per bin, one-sided, Hann-windowed Welch average). */
  power: Float64Array;
  /** Spacing of the bins of `power`; bin k is at k·binWidth. */
  binWidth: Hertz;
}
