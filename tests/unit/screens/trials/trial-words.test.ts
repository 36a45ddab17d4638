import { expect, test } from 'vitest';
import { runResult } from '../../../../src/lib/bench/trials/run-result.js';
import type { AnsweredTrial, BlindRun } from '../../../../src/lib/file/blind-run.js';
import { choiceProblem, planWords, resultWords } from '../../../../src/lib/screens/trials/trial-words.js';
import { pendingWords } from '../../../../src/lib/screens/parts/words/pending-words.js';
import { blindRun } from '../../../helpers/blind-run.js';

const right: AnsweredTrial = { behind: [0, 0, 1], said: 'B' };
const wrong: AnsweredTrial = { behind: [0, 1, 0], said: 'B' };
const plate: AnsweredTrial = { behind: [0, 1], said: 'A' };
const box: AnsweredTrial = { behind: [1, 0], said: 'A' };

/** So many answers of one kind and of another. */
function run(first: [number, AnsweredTrial], second: [number, AnsweredTrial], more: Partial<BlindRun> = {}) {
  const answers = [first, second].flatMap(([count, answer]) => Array.from({ length: count }, () => answer));
  const made = blindRun({ ...more, answers });
  return resultWords(made, runResult(made));
}

// Figures: SciPy, tests/reference/trials.json; a preference is twice one tail.
test('beforehand it is said what so many trials can show', () => {
  expect(planWords('same', 2, 16)).toEqual([
    'To show that you hear a difference, 12 of 16 answers must be right.',
    'Guessing gets there in 3.8 of 100 such runs.',
    'Who is right in four of five trials gets there in 80 of 100 runs, who is right in three of five in 17.'
  ]);
  expect(planWords('better', 2, 16)).toEqual([
    'To show a preference, one of the two must be chosen 13 of 16 times.',
    'Without any preference that happens in 2.1 of 100 such runs.',
    'Who prefers one in four of five trials gets there in 60 of 100 runs, who prefers it in three of five in 6.6.'
  ]);
  expect(planWords('better', 4, 12)).toEqual([
    'Each is compared with each 2 times.',
    'What comes of it is an order of what you chose. It proves nothing.'
  ]);
});

test('one mount only, too few and too many are said', () => {
  expect(choiceProblem('same', 1, 1)).toMatch(/^There is one mount only\./);
  expect(choiceProblem('better', 4, 1)).toBe('Choose two mounts.');
  expect(choiceProblem('like', 4, 3)).toBe('This question compares two mounts; 3 are chosen.');
  expect([choiceProblem('better', 4, 4), choiceProblem('same', 2, 2)]).toEqual([null, null]);
});

test('a sound that is not there is told apart from one that is being worked out', () => {
  expect(pendingWords(true, 'listening …')).toBe('What is compared is being worked out …');
  expect(pendingWords(false, 'not measured: its recording is not open')).toBe(
    'There is no sound to compare on: not measured: its recording is not open.'
  );
});

test('what was heard is told with its chance, its interval and what it does not prove', () => {
  const shown = run([13, right], [3, wrong]);
  expect(shown.count).toBe('13 of 16 right.');
  expect(shown.shows).toEqual([
    'By guessing alone 13 or more of 16 are right in 1.1 of 100 such runs.',
    'That is too rare for guessing: a difference between Plate and Box was heard, on this sound and at one loudness.',
    'In the long run you would be right in 54 % to 96 % of all trials (95 % confidence, exact).'
  ]);
  const hidden = run([9, right], [7, wrong]);
  expect(hidden.shows[1]).toBe('A difference between Plate and Box is not shown.');
  expect(hidden.not.at(-1)).toBe(
    'That does not prove that there is none. Who is right in three of five trials is missed by 16 trials in 83 of 100 runs.'
  );
  for (const words of [shown, hidden]) expect(words.shows.join()).not.toMatch(/no difference/i);
});

test('of few trials it is told whether all of them would have shown something', () => {
  // 1/32 is at most .05, 1/16 and 2/32 are more.
  expect(run([4, right], [1, wrong], { ended: 'early' }).not.at(-1)).toMatch(
    /Of so few trials all 5 must be right to show anything\.$/
  );
  for (const words of [
    run([3, right], [1, wrong], { ended: 'early' }),
    run([5, plate], [0, box], { question: 'better', ended: 'early' })
  ])
    expect(words.not.at(-1)).toMatch(/So few trials can show nothing\.$/);
});

test('a preference is told for whichever was chosen more often', () => {
  const words = run([3, plate], [13, box], { question: 'better' });
  expect(words.count).toBe('Plate was chosen 3 of 16 times, Box 13.');
  expect(words.shows).toEqual([
    'Without any preference one of the two is chosen 13 times or more in 2.1 of 100 such runs.',
    'That is too rare for chance: on this sound and at one loudness Box is preferred to Plate.',
    'In the long run you would choose Plate in 4 % to 46 % of all trials (95 % confidence, exact).'
  ]);
  expect(run([8, plate], [8, box], { question: 'better' }).shows[1]).toBe('A preference is not shown.');
});

test('stopping, a change of the bench and one answer throughout are said', () => {
  expect(run([4, right], [1, wrong], { ended: 'early' }).not[0]).toBe(
    'Stopped after 5 of 16 trials. Who stops when it looks well passes by chance more often than these figures say.'
  );
  expect(run([4, right], [1, wrong], { ended: 'changed' }).not[0]).toMatch(
    /^The bench was changed after 5 of 16 trials\./
  );
  expect(run([8, right], [8, wrong]).not[0]).toMatch(/^Every answer was B\. What stood behind it changed/);
  const same: AnsweredTrial = { behind: [0, 1], said: 'same' };
  expect(run([16, same], [0, same], { question: 'same' }).not[0]).toMatch(/^Every answer was “the same”\./);
  const none = run([0, right], [0, wrong], { ended: 'early' });
  expect(none).toEqual({ count: 'No trial was answered.', shows: ['So there is nothing to tell.'], not: [] });
});

test('a ranking tells who was chosen most often, and how far ahead only where that can be told', () => {
  const mounts = ['Plate', 'Box', 'Cab'];
  const answer = (winner: number, loser: number): AnsweredTrial => ({ behind: [winner, loser], said: 'A' });
  const told = (answers: AnsweredTrial[]) => {
    const made = blindRun({ question: 'better', mounts, places: [0, 1, 2], planned: 6, answers });
    return resultWords(made, runResult(made));
  };
  const clear = told([answer(0, 1), answer(0, 2), answer(1, 2), answer(0, 1), answer(0, 2), answer(2, 1)]);
  expect(clear.count).toBe('Plate was chosen most often, 4 of 4 times.');
  const apart = 'How far they are apart cannot be told: some of them lost no comparison with the rest.';
  expect(clear.shows).toEqual([apart]);
  // Two that share the wins between them, over one that never wins: none of the two was chosen always.
  expect(told([answer(0, 1), answer(1, 0), answer(0, 2), answer(1, 2)]).shows).toEqual([apart]);
  const round = told([answer(0, 1), answer(1, 2), answer(2, 0), answer(0, 1), answer(1, 2), answer(2, 0)]);
  expect(round.count).toBe('Plate and Box and Cab were chosen most often, equally.');
  expect(round.shows[0]).toBe(
    'By the model of Bradley and Terry Plate would be chosen before Box in 50 % of all comparisons.'
  );
});
