import { LETTERS } from '../file/blind-run.js';
import type { VoteRound } from '../file/vote-round.js';
import { csvText } from './csv-text.js';

const HEAD = [
  'round',
  'day',
  'question',
  'sound',
  'place',
  'noise',
  'model',
  'loudness',
  'state',
  'names_seen_before',
  'letter',
  'mount',
  'hands'
];

/**
 * Hall votes as a table, one row a letter, quoted as RFC 4180 asks. Names are those of the time of the round; of a round whose names have
 * not been shown they are left out. `behind` says which mount, by its place in the round, stood behind each letter.
 */
export function votesCsv(
  rounds: readonly VoteRound[],
  behind: (round: VoteRound) => readonly number[]
): string {
  const rows = rounds.flatMap((round, i) =>
    behind(round).map((place, letter) => [
      String(i + 1),
      round.day,
      round.question,
      round.sound,
      round.place,
      round.noise ?? '',
      round.model,
      round.sameLoudness ? 'same loudness' : 'same drive',
      round.ended ?? (round.stage === 'shown' ? 'shown' : 'open'),
      round.seen ? 'yes' : 'no',
      LETTERS[letter],
      round.stage === 'shown' ? round.mounts[place] : '',
      String(round.hands[letter] ?? '')
    ])
  );
  return csvText([HEAD, ...rows]);
}
