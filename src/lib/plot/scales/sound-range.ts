import { USUAL_RANGE } from '../../numeric/third-octave-bands.js';
import type { PictureRange } from './picture-range.js';

/** What the axes of a spectrum show: room above the strongest line for the numbers of the harmonics. */
export const soundRange: PictureRange = { from: 20, to: USUAL_RANGE.to, top: 10, bottom: -70 };
