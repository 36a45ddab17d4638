import type { PictureRange } from './picture-range.js';

/** What the axes of a spectrum show: room above the strongest line for the numbers of the harmonics. */
export const soundRange: PictureRange = { from: 20, to: 16000, top: 10, bottom: -70 };
