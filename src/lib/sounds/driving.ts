import type { KnobValues, SoundKnobs } from './knob.js';

/** The highest notch of a lever; 0 is idle, or at rest (common practice). */
export const FULL_NOTCH = 8;

/** What every machine has beside its own knobs: what its cord blows, and whether it drives by itself. */
export const DRIVING_KNOBS = {
  signal: {
    type: 'choice',
    name: 'horn or whistle on the cord',
    options: ['three-note horn', 'five-note horn', 'whistle'],
    usual: 'five-note horn'
  },
  runPast: { type: 'switch', name: 'run past by itself', usual: false }
} as const satisfies SoundKnobs;

export type Driving = KnobValues<typeof DRIVING_KNOBS>;
export type Signal = Driving['signal'];
