import type { VoteRound } from '../../src/lib/file/vote-round.js';

/** A round on two mounts that has just begun, but for what is said of it otherwise. */
export function voteRound(otherwise: Partial<VoteRound> = {}): VoteRound {
  return {
    question: 'Which sounds fullest?',
    mounts: ['Plate', 'Box'],
    places: [0, 1],
    sound: 'No. 41',
    place: 'hand',
    model: 'wave',
    sameLoudness: true,
    day: '2026-11-30',
    seed: 1,
    bench: 'mark',
    stage: 'hear',
    hands: [null, null],
    ...otherwise
  };
}
