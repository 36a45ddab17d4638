import type { Hertz } from '../../units.js';

/** The pitch of a note, in semitones from A4: 440·2^(n/12) Hz, equal temperament (ISO 16:1975). */
export function notePitch(semitones: number): Hertz {
  return 440 * 2 ** (semitones / 12);
}
