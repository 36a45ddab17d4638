import type { StillKind } from '../sound-kind.js';
import { SQUEAL_KNOBS, type Squeal } from './squeal.js';

/** Brake blocks on wheels that come to a stand. */
export const SQUEAL_KIND: StillKind<Squeal> = {
  knobs: SQUEAL_KNOBS,
  marks: ({ pitch }) => [{ frequency: pitch, name: 'squeal', harmonics: 3 }]
};
