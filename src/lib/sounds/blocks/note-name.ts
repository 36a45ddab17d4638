const NAMES = ['C', 'D♭', 'D', 'E♭', 'E', 'F', 'G♭', 'G', 'A♭', 'A', 'B♭', 'B'];

/**
 * The name of a note, its octave counted from C (scientific pitch notation): 0 is A4, −1 is A♭4, 3 is C5.
 *
 * @param semitones whole semitones from A4
 */
export function noteName(semitones: number): string {
  const fromC4 = semitones + 9;
  return `${NAMES[((fromC4 % 12) + 12) % 12]}${4 + Math.floor(fromC4 / 12)}`;
}
