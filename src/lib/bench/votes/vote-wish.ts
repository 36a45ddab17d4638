import { BENCH_FILE_LIMITS } from '../../file/bench-file-limits.js';
import { VOTED } from '../../file/vote-round.js';
import type { Lufs } from '../../units.js';
import type { Bench } from '../bench.svelte.js';
import { whyNotCompared } from '../trials/why-not-compared.js';
import { isSameBenchAs, type VoteWish } from './hall-vote.js';

/** What is put to a hall at first: what was voted on last, if it is still there; else what is heard and what levels are written against, or its neighbour. */
export function placesAtFirst({
  file,
  heard,
  measuredAgainst,
  stands
}: Pick<Bench, 'file' | 'heard' | 'measuredAgainst' | 'stands'>): readonly number[] {
  const last = file.votes?.at(-1);
  if (last && isSameBenchAs(file, last)) return last.places;
  const other = measuredAgainst !== heard ? measuredAgainst : stands.find((stand) => stand !== heard);
  return other ? [heard.index, other.index].sort((a, b) => a - b) : [heard.index];
}

/** One sentence why a round that is wished cannot begin; null where it can. */
export function whyNoVote(
  { file, stands }: Pick<Bench, 'file' | 'stands'>,
  { question, places, sameLoudness }: VoteWish,
  loudnessOf: (place: number) => Lufs | null
): string | null {
  const rounds = file.votes?.length ?? 0;
  if (rounds >= BENCH_FILE_LIMITS.votes) return `This bench keeps ${rounds} rounds already, and no more.`;
  if (stands.length < VOTED.fewest)
    return 'There is one mount only. A vote needs two: put another one on the shelf.';
  if (places.length < VOTED.fewest) return 'Choose two mounts or more.';
  if (question.trim() === '') return 'The hall needs a question.';
  return whyNotCompared(
    places.map((place) => stands[place]),
    places.map(loudnessOf),
    { sameLoudness }
  );
}
