import { noteName } from '../blocks/note-name.js';
import { notePitch } from '../blocks/note-pitch.js';
import type { StillKind } from '../sound-kind.js';
import { HORN_KNOBS, type Horn } from './horn.js';
import { mistuning } from './horn-bells.js';

/** A horn that gives a signal. Its marks are its notes by name. */
export const HORN_KIND: StillKind<Horn> = {
  knobs: HORN_KNOBS,
  marks(horn) {
    const cents = mistuning(horn);
    return horn.chord
      .map((note, i) => ({
        frequency: notePitch(note) * 2 ** (cents[i] / 1200),
        name: noteName(note),
        harmonics: 4
      }))
      .sort((a, b) => a.frequency - b.frequency);
  }
};
