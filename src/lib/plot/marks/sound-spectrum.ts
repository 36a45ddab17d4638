import type { Hertz } from '../../units.js';

/** A spectrum of the sound as a curve; levels against the strongest line of the sound itself. */
export interface SoundSpectrum {
  /** Ascending. */
  frequency: Float64Array;
  /** Same length as `frequency`; −Infinity is silence. */
  levelDb: Float64Array;
}

/** A frequency marked in the spectrum: a line with words where it is strong, else a tick with its number. */
export interface SpectrumMark {
  frequency: Hertz;
  /** Words beside the line, the number under the tick; empty for a tick alone. */
  text: string;
  /** What the readout calls it, where that is not its text. */
  name?: string;
  strong: boolean;
}
