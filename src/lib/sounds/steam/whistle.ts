import type { Hertz } from '../../units.js';
import { type KnobValues, type SoundKnobs, seedKnob, shareKnob } from '../knob.js';
import { notePitch } from '../blocks/note-pitch.js';

/** What of a steam whistle can be set. */
export const WHISTLE_KNOBS = {
  chord: {
    type: 'chord',
    name: 'pitches',
    fewest: 1,
    most: 6,
    lowest: -14,
    highest: 26,
    usual: [-4, 0, 3, 8]
  },
  breath: shareKnob('breath', 0.5),
  seed: seedKnob(8)
} as const satisfies SoundKnobs;

/** A steam whistle: one stopped bell for each of its notes. */
export type Whistle = { kind: 'whistle'; name: string } & KnobValues<typeof WHISTLE_KNOBS>;

/** Pitches of the notes in Hz, in their order: f = 440·2^(n/12) (ISO 16:1975). */
export function whistlePitches({ chord }: Pick<Whistle, 'chord'>): Hertz[] {
  return chord.map(notePitch);
}
