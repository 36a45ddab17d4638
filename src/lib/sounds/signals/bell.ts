import { type KnobValues, type SoundKnobs, seedKnob } from '../knob.js';

export const BELL_KNOBS = {
  pitch: {
    type: 'number',
    name: 'nominal frequency',
    unit: 'Hz',
    min: 400,
    max: 3000,
    step: 10,
    usual: 1150
  },
  rate: { type: 'number', name: 'strokes', unit: 'perSecond', min: 0.4, max: 4, step: 0.1, usual: 1.6 },
  decay: { type: 'number', name: 'decay time', unit: 's', min: 0.5, max: 10, step: 0.1, usual: 5 },
  seed: seedKnob(12)
} as const satisfies SoundKnobs;

/** An engine's bell. `decay` is the time in which its nominal, the partial it is named by, falls by 60 dB. */
export type Bell = { kind: 'bell'; name: string } & KnobValues<typeof BELL_KNOBS>;

export const BELL_PRESETS: readonly Bell[] = [
  { kind: 'bell', name: 'No. 12, bronze bell', pitch: 1150, rate: 1.6, decay: 5, seed: 12 },
  { kind: 'bell', name: 'No. 41, steel bell, air ringer', pitch: 1480, rate: 2.6, decay: 2.5, seed: 41 }
];
