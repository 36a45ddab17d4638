import type { Decibels } from '../../units.js';
import { louderOrQuieter } from '../../format/louder-or-quieter.js';
import { shortened } from '../../format/shortened.js';

/** One sentence in two parts: the first is what a hall is to remember. */
export interface LevelWords {
  verdict: string;
  rest: string;
}

/**
 * How loud a mount is against the one measured against, on the sound that plays, said to a hall. The difference is
 * the true one even while all mounts are played equally loud, and then that is said too.
 */
export function levelWords({
  difference,
  against,
  isAgainst,
  sameLoudness
}: {
  difference: Decibels | null;
  against: string;
  isAgainst: boolean;
  sameLoudness: boolean;
}): LevelWords {
  const equally = sameLoudness ? '; played equally loud now' : '';
  if (isAgainst) return { verdict: 'The measure', rest: `for the others, on this sound${equally}` };
  if (difference === null) return { verdict: 'Listening …', rest: '' };
  const verdict = louderOrQuieter(difference);
  const than = verdict === 'just as loud' ? 'as' : 'than';
  return { verdict, rest: `${than} ${shortened(against.toLowerCase(), 28)}, on this sound${equally}` };
}
