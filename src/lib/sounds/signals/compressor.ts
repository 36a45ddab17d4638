import { type KnobValues, type SoundKnobs, seedKnob } from '../knob.js';

export const COMPRESSOR_KNOBS = {
  strokes: {
    type: 'number',
    name: 'strokes',
    unit: 'perMinute',
    min: 60,
    max: 1200,
    step: 10,
    usual: 420
  },
  cylinders: {
    type: 'number',
    name: 'cylinders',
    unit: 'count',
    min: 1,
    max: 4,
    step: 1,
    usual: 2,
    whole: true
  },
  unloading: { type: 'switch', name: 'stops and unloads', usual: true },
  seed: seedKnob(3)
} as const satisfies SoundKnobs;

/**
 * An air compressor. `strokes` are those of each cylinder in a minute, one a turn; with `unloading` it stops, lets off
 * its air and rests, otherwise it runs on.
 */
export type Compressor = { kind: 'compressor'; name: string } & KnobValues<typeof COMPRESSOR_KNOBS>;

export const COMPRESSOR_PRESETS: readonly Compressor[] = [
  {
    kind: 'compressor',
    name: 'No. 41, two-cylinder compressor',
    strokes: 420,
    cylinders: 2,
    unloading: true,
    seed: 3
  },
  {
    kind: 'compressor',
    name: 'Railbus, small compressor',
    strokes: 900,
    cylinders: 1,
    unloading: true,
    seed: 9
  },
  {
    kind: 'compressor',
    name: 'Shop compressor, running on',
    strokes: 300,
    cylinders: 3,
    unloading: false,
    seed: 6
  }
];
