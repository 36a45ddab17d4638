import type { Decibels, Hertz } from '../../units.js';
import { frequencyWords } from '../../format/frequency-words.js';

/** Multiples beyond this one lie too close together to be heard as those of a note. */
const FURTHEST = 16;

/**
 * Whether the rate that a sound is known by can be heard itself, or only its multiples.
 *
 * @param throughDb what the heard mount lets through of the rate
 * @param reaches how far down the heard mount reaches; null where it reaches nowhere
 */
export function rateSentence(
  { name, frequency }: { name: string; frequency: Hertz },
  throughDb: Decibels | null,
  reaches: Hertz | null
): string {
  // Notes have no article: A♭4, but the firing rate.
  const subject = /^[A-G]/.test(name) ? name : `the ${name}`;
  const rate = `${subject}, ${frequency < 10 ? frequency.toFixed(1) : Math.round(frequency)} Hz`;
  if (throughDb === null || reaches === null) return `Marked in the picture: ${rate}.`;
  if (frequency >= reaches)
    return `Within what this speaker can do here (down to ${frequencyWords(reaches)}): ${rate}. You hear it itself.`;
  const first = Math.ceil(reaches / frequency);
  const lost = `Too low for this speaker here: ${rate}; ${Math.round(-throughDb)} dB of it are lost.`;
  return first <= FURTHEST
    ? `${lost} You hear its multiples from the ${ordinal(first)} on, ${frequencyWords(first * frequency)}, and the ear makes out the rate from them.`
    : `${lost} You hear how often it comes, not a note.`;
}

function ordinal(number: number): string {
  const last = number % 100 > 10 && number % 100 < 14 ? 0 : number % 10;
  return `${number}${['th', 'st', 'nd', 'rd'][last] ?? 'th'}`;
}
