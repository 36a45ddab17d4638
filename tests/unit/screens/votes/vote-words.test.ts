import { expect, test } from 'vitest';
import {
  deedWords,
  endedWords,
  heardUnder,
  nameBehind,
  notHeardWords,
  roundWords
} from '../../../../src/lib/screens/votes/vote-words.js';
import { voteRound } from '../../../helpers/vote-round.js';

/** A round that was shown, on as many mounts as there are hands. */
const shown = (hands: number[], more = {}) =>
  voteRound({
    stage: 'shown',
    hands,
    mounts: ['Plate', 'Box', 'Cab', 'Tender'].slice(0, hands.length),
    places: hands.map((_, i) => i),
    ...more
  });

// Figures: SciPy, tests/reference/trials.json.
test('a clear lead is more than chance, with its share of a large crowd', () => {
  const round = shown([3, 11, 4, 2]);
  expect(roundWords(round)).toEqual({
    most: `B, ${nameBehind(round, 1)}: 11 of 20 hands`,
    shows: [
      'By chance one letter or another gets 11 or more in 1.6 of 100 halls: this is more than chance.',
      'Of a large crowd 26 to 81\u00a0% would choose B (95\u00a0% confidence).'
    ],
    not: ['But people see each other’s hands: it is less sure than it sounds.']
  });
});

test('a narrow lead may be chance; where two letters can get so many, chance is told as at most', () => {
  expect(roundWords(shown([13, 6, 5, 4])).shows[0]).toContain('gets 13 or more in at most 4.5 of 100 halls');
  expect(roundWords(shown([12, 8])).shows).toEqual([
    'By chance one letter or another gets 12 or more in 50 of 100 halls: this may be chance.',
    'Of a large crowd 33 to 83\u00a0% would choose A (95\u00a0% confidence).'
  ]);
});

test('a tie names all that lead, and no share; all hands for one are called all', () => {
  expect(roundWords(shown([5, 5])).most).toBe('All have 5 hands each');
  expect(roundWords(shown([7, 2, 7])).most).toBe('A and C have 7 hands each');
  expect(roundWords(shown([7, 7, 2, 7])).most).toBe('A, B and D have 7 hands each');
  expect(roundWords(shown([7, 2, 7])).shows).toHaveLength(1);
  expect(roundWords(shown([10, 10])).shows[0]).toContain('in 100 of 100 halls');
  const all = roundWords(shown([0, 8]));
  expect(all.most).toMatch(/: all 8 hands$/);
  expect(all.shows[0]).toContain('gets all in 0.8 of 100 halls');
  expect(roundWords(shown([1, 0])).most).toMatch(/: the only hand$/);
});

test('names that were seen before the count are told', () => {
  expect(roundWords(shown([12, 8], { seen: true })).not).toContain('The names had been seen before.');
});

test('what a round was heard under stands in one line', () => {
  expect(heardUnder(voteRound())).toBe('No. 41, wave solution, in the hand; all equally loud');
  expect(
    heardUnder(voteRound({ place: 'layout', noise: 'clubNight', model: 'rule', sameLoudness: false }))
  ).toBe('No. 41, rule of thumb, on the layout, club night; all at the same drive');
});

test('the hall is told what to do now', () => {
  expect(deedWords(voteRound(), 1)).toBe('You hear B');
  expect(deedWords(voteRound({ stage: 'count' }), 0)).toBe('Hands up for A');
  expect(deedWords(voteRound({ stage: 'counted', hands: [12, 8] }), 0)).toBe('20 hands are counted');
  expect(deedWords(voteRound({ stage: 'counted', hands: [1, 0] }), 0)).toBe('One hand is counted');
  expect(notHeardWords(['A', 'B', 'C'], [true, false, false])).toBe('Not heard yet: B, C.');
  expect(notHeardWords(['A', 'B'], [true, true])).toBeNull();
});

test('why a round has no result', () => {
  expect(endedWords(voteRound({ ended: 'early', hands: [1, null] }))).toBe(
    'Broken off after 1 hand, before the names were shown.'
  );
  expect(endedWords(voteRound({ ended: 'changed' }))).toContain('The bench was changed');
  expect(endedWords(shown([1, 2]))).toBeNull();
});
