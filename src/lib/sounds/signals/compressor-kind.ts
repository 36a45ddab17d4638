import type { StillKind } from '../sound-kind.js';
import { COMPRESSOR_KNOBS, type Compressor } from './compressor.js';

/** An air compressor. */
export const COMPRESSOR_KIND: StillKind<Compressor> = {
  knobs: COMPRESSOR_KNOBS,
  marks: ({ strokes, cylinders }) => [
    { frequency: (strokes / 60) * cylinders, name: 'stroke rate', harmonics: 8 },
    ...(cylinders > 1 ? [{ frequency: strokes / 60, name: 'turns', harmonics: 1 }] : [])
  ]
};
