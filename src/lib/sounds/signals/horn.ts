import { type KnobValues, type SoundKnobs, seedKnob, shareKnob } from '../knob.js';

export const HORN_KNOBS = {
  chord: {
    type: 'chord',
    name: 'notes',
    fewest: 1,
    most: 6,
    lowest: -24,
    highest: 15,
    usual: [-7, -3, 0, 2, 7]
  },
  attack: {
    type: 'number',
    name: 'time until all bells speak',
    unit: 's',
    min: 0.02,
    max: 0.6,
    step: 0.01,
    usual: 0.16
  },
  spread: { type: 'number', name: 'mistuning', unit: 'cents', min: 0, max: 20, step: 1, usual: 8 },
  air: shareKnob('air noise', 0.08),
  seed: seedKnob(41)
} as const satisfies SoundKnobs;

/**
 * An air horn. `chord` holds its notes in semitones from A4 = 440 Hz; `spread` is how far the flattest and the sharpest
 * bell are apart from where they should be; `air` is the loudness (RMS) of the air as a share of that of the notes.
 */
export type Horn = { kind: 'horn'; name: string } & KnobValues<typeof HORN_KNOBS>;

/** Horns of the Carrow & Eastmoor: pitched as horns are (common practice, from memory), in intervals of their own. */
export const HORN_PRESETS: readonly Horn[] = [
  {
    kind: 'horn',
    name: 'No. 41, five-note horn',
    chord: [-7, -3, 0, 2, 7],
    attack: 0.16,
    spread: 8,
    air: 0.08,
    seed: 41
  },
  {
    kind: 'horn',
    name: 'No. 7, three-note horn',
    chord: [-9, -4, 1],
    attack: 0.1,
    spread: 5,
    air: 0.08,
    seed: 7
  },
  {
    kind: 'horn',
    name: 'Railbus, two-note horn',
    chord: [-6, -1],
    attack: 0.06,
    spread: 3,
    air: 0.14,
    seed: 23
  }
];
