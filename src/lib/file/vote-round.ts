import type { Place } from '../acoustics/listener.js';
import type { PlaceKind } from '../sounds/places/place-spectra.js';
import type { ModelName } from './bench-file.js';

/** How far a round has come: the hall hears, hands are counted, all are counted, the names have been shown. */
export const VOTE_STAGES = ['hear', 'count', 'counted', 'shown'] as const;
export type VoteStage = (typeof VOTE_STAGES)[number];

/** How many mounts can be put to a hall at once. */
export const VOTED = { fewest: 2, most: 6 } as const;

/** A round of a hall vote: mounts behind letters, a question, and how many hands went up for each letter. */
export interface VoteRound {
  /** What the hall was asked, in its words. */
  question: string;
  /** What was voted on, by the names it had. */
  mounts: string[];
  /** Where it stood among the setups. */
  places: number[];
  /** The sound's name. */
  sound: string;
  /** Where it was listened to, and what noise was heard with it. */
  place: Place;
  noise?: PlaceKind;
  model: ModelName;
  /** All as loud as the quietest of them, or all at the same drive. */
  sameLoudness: boolean;
  /** As 2026-11-30. */
  day: string;
  /** What the letters are drawn from. */
  seed: number;
  /** Tells whether the bench is still the one that is voted on. */
  bench: string;
  stage: VoteStage;
  /** Hands by letter, A first; null where none have been counted yet. */
  hands: (number | null)[];
  /** The names were shown and covered again before this count. */
  seen?: boolean;
  /** Broken off before the names were shown, by the presenter or by a change of the bench. */
  ended?: 'early' | 'changed';
}

/** Whether the names have yet to be shown. */
export function isOpen({ stage, ended }: VoteRound): boolean {
  return stage !== 'shown' && ended === undefined;
}

/** What one value of a round says of another; one sentence where it cannot be, null where it can. */
export function roundProblem({ mounts, places, stage, hands, ended }: VoteRound): string | null {
  const { fewest, most } = VOTED;
  if (!(mounts.length >= fewest && mounts.length <= most))
    return `mounts must be ${fewest} … ${most}, got ${mounts.length}`;
  if (places.length !== mounts.length) return `places must be as many as mounts, got ${places.length}`;
  if (hands.length !== mounts.length) return `hands must be as many as mounts, got ${hands.length}`;
  const counted = stage === 'counted' || stage === 'shown';
  if (counted && hands.includes(null))
    return `hands must be counted for every letter once stage is "${stage}"`;
  if (counted && !hands.some((count) => count! > 0))
    return `hands must be one or more once stage is "${stage}"`;
  if (stage === 'shown' && ended) return `ended must be absent once stage is "shown", got "${ended}"`;
  return null;
}
