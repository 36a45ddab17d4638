import { ofHundred } from '../../format/of-hundred.js';
import { LETTERS } from '../../file/blind-run.js';
import type { VoteRound } from '../../file/vote-round.js';
import { behindLetters, countedHands } from '../../bench/votes/hall-vote.js';
import { handsOutcome } from '../../listening/trials/hands-outcome.js';
import { PLACE_NOISES } from '../../sounds/places/place-spectra.js';
import { shortened } from '../../format/shortened.js';
import { MODEL_TITLES } from '../parts/words/model-titles.js';

/** What a round was heard under: *No. 41, wave solution, in the hand; all equally loud*. */
export function heardUnder({ sound, model, place, noise, sameLoudness }: VoteRound): string {
  const at = place === 'layout' ? 'on the layout' : 'in the hand';
  const behind = noise ? [PLACE_NOISES.find(({ kind }) => kind === noise)!.name] : [];
  return `${[shortened(sound, 30), MODEL_TITLES[model], at, ...behind].join(', ')}; ${
    sameLoudness ? 'all equally loud' : 'all at the same drive'
  }`;
}

/** What the hall is to do now, in large letters. */
export function deedWords({ stage, hands }: Pick<VoteRound, 'stage' | 'hands'>, letter: number): string {
  if (stage === 'hear') return `You hear ${LETTERS[letter]}`;
  if (stage === 'count') return `Hands up for ${LETTERS[letter]}`;
  return countedHands({ hands }) === 1
    ? 'One hand is counted'
    : `${countedHands({ hands })} hands are counted`;
}

/** What the next key does. */
export const ON_WORDS: Readonly<Record<VoteRound['stage'], string>> = {
  hear: 'count the hands',
  count: 'next letter',
  counted: 'show the names',
  shown: 'next round'
};

/** What the key back does. */
export const BACK_WORDS: Readonly<Record<VoteRound['stage'], string>> = {
  hear: 'back',
  count: 'back',
  counted: 'count again',
  shown: 'cover'
};

/** The letters that the hall has not heard yet. */
export function notHeardWords(letters: readonly string[], heard: readonly boolean[]): string | null {
  const missing = letters.filter((_, i) => !heard[i]);
  return missing.length > 0 ? `Not heard yet: ${missing.join(', ')}.` : null;
}

/** How many hands, in words. */
export function handWords(count: number): string {
  return count === 1 ? '1 hand' : `${count} hands`;
}

/** What came of a round: which has most, what that shows, and what it does not. */
export interface RoundWords {
  most: string;
  shows: string[];
  not: string[];
}

/** The words of a round whose hands are all counted. */
export function roundWords(round: VoteRound): RoundWords {
  const { total, most, leading, chance, intervals, shown } = handsOutcome(
    round.hands.map((count) => count ?? 0)
  );
  const letters = leading.map((i) => LETTERS[i]);
  const name = (letter: number): string => shortened(nameBehind(round, letter), 28);
  const so = shown ? 'this is more than chance' : 'this may be chance';
  const many =
    total === 1 ? 'the only hand' : most === total ? `all ${total} hands` : `${most} of ${total} hands`;
  // Two letters can get so many.
  const atMost = 2 * most <= total && chance < 1;
  const [low, high] = intervals[leading[0]];
  return {
    most:
      leading.length === 1
        ? `${letters[0]}, ${name(leading[0])}: ${many}`
        : `${leading.length === round.mounts.length ? 'All' : spoken(letters)} have ${handWords(most)} each`,
    shows: [
      `By chance one letter or another gets ${most === total ? 'all' : `${most} or more`} in ${
        atMost ? 'at most ' : ''
      }${ofHundred(chance)} of 100 halls: ${so}.`,
      ...(leading.length === 1
        ? [
            `Of a large crowd ${percent(low)} to ${percent(high)}\u00a0% would choose ${letters[0]} (95\u00a0% confidence).`
          ]
        : [])
    ],
    not: [
      'But people see each other’s hands: it is less sure than it sounds.',
      ...(round.seen ? ['The names had been seen before.'] : [])
    ]
  };
}

/** The name of what stood behind a letter. */
export function nameBehind(round: Pick<VoteRound, 'mounts' | 'seed'>, letter: number): string {
  return round.mounts[behindLetters(round)[letter]];
}

/** Why a round has no result. */
export function endedWords({ ended, hands }: Pick<VoteRound, 'ended' | 'hands'>): string | null {
  if (ended === 'changed')
    return 'The bench was changed before the names were shown. What had been heard and what would be heard are not the same; the round ended there.';
  if (ended === 'early')
    return `Broken off after ${handWords(countedHands({ hands }))}, before the names were shown.`;
  return null;
}

function spoken(letters: readonly string[]): string {
  return `${letters.slice(0, -1).join(', ')} and ${letters.at(-1)}`;
}

function percent(share: number): number {
  return Math.round(100 * share);
}
