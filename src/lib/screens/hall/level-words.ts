import type { Decibels } from '../../units.js';
import { louderOrQuieter } from '../../format/louder-or-quieter.js';
import { shortened } from '../../format/shortened.js';

/** One sentence in two parts: the first is what a hall is to remember. */
export interface LevelWords {
  verdict: string;
  rest: string;
}

/** How loud a mount is against the one measured against, said to a hall; what it holds for is said after it. */
export function levelWords({
  difference,
  against,
  isAgainst
}: {
  difference: Decibels | null;
  against: string;
  isAgainst: boolean;
}): LevelWords {
  if (isAgainst) return { verdict: 'To compare with', rest: 'the others are louder or quieter' };
  if (difference === null) return { verdict: 'Listening …', rest: '' };
  const verdict = louderOrQuieter(difference);
  const than = verdict === 'just as loud' ? 'as' : 'than';
  return { verdict, rest: `${than} ${shortened(against.toLowerCase(), 28)}` };
}
