import { noteName } from '../blocks/note-name.js';
import type { MarkedRate, StillKind } from '../sound-kind.js';
import { type Whistle, WHISTLE_KNOBS, whistlePitches } from './whistle.js';

function marks(sound: Whistle): MarkedRate[] {
  const pitches = whistlePitches(sound);
  return sound.chord
    .map((semitones, k) => ({ frequency: pitches[k], name: noteName(semitones), harmonics: 3 }))
    .sort((a, b) => a.frequency - b.frequency);
}

/** A steam whistle. */
export const WHISTLE_KIND: StillKind<Whistle> = { knobs: WHISTLE_KNOBS, marks };
