import { type KnobValues, type SoundKnobs, seedKnob } from '../knob.js';

export const CROSSING_KNOBS = {
  gongs: { type: 'number', name: 'gongs', unit: 'count', min: 1, max: 2, step: 1, usual: 2, whole: true },
  rate: { type: 'number', name: 'strokes', unit: 'perSecond', min: 1, max: 8, step: 0.1, usual: 3.2 },
  pitch: {
    type: 'number',
    name: 'pitch of the first gong',
    unit: 'Hz',
    min: 300,
    max: 2500,
    step: 10,
    usual: 1050
  },
  seed: seedKnob(5)
} as const satisfies SoundKnobs;

/** The bell of a level crossing: one gong, or two struck in turn. `rate` counts the strokes on both together. */
export type Crossing = { kind: 'crossing'; name: string } & KnobValues<typeof CROSSING_KNOBS>;

export const CROSSING_PRESETS: readonly Crossing[] = [
  { kind: 'crossing', name: 'Mill Lane crossing, two gongs', gongs: 2, rate: 3.2, pitch: 1050, seed: 5 },
  { kind: 'crossing', name: 'Quay crossing, one gong', gongs: 1, rate: 2.4, pitch: 720, seed: 31 }
];
