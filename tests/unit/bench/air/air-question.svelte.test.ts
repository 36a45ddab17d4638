import { expect, test } from 'vitest';
import { airAtHand, PLATE, SHELL, stand } from './air-at-hand.svelte.js';

test('nothing is asked while nobody looks, and as long as anybody does', () => {
  const { question } = airAtHand();
  expect(question.asked).toBeNull();
  const [one, other] = [question.watch(), question.watch()];
  expect(question.asked).toMatchObject({ installation: PLATE, accuracy: 'full' });
  one();
  expect(question.asked).not.toBeNull();
  other();
  expect(question.asked).toBeNull();
});

test('it is drafted while a size is dragged, and asked in full once it rests', () => {
  const { question, drag } = airAtHand();
  question.watch();
  drag(true);
  expect(question.asked?.accuracy).toBe('draft');
  drag(false);
  expect(question.asked?.accuracy).toBe('full');
});

test('nothing is asked of the rule of thumb, of what cannot be built or of what cannot be solved', () => {
  const { question, setModel, hear } = airAtHand();
  question.watch();
  setModel('rule');
  expect(question.asked).toBeNull();
  setModel('wave');
  expect(question.asked).not.toBeNull();
  hear(stand(PLATE, { problem: 'too narrow' }));
  expect(question.asked).toBeNull();
  hear(stand(PLATE, { refused: 'too slender' }));
  expect(question.asked).toBeNull();
});

test('it is drawn against another mount that can be solved, and against no other', () => {
  const { question, measureAgainst } = airAtHand();
  expect(question.against).toBeNull();
  measureAgainst(stand(SHELL));
  expect(question.against).toBe(SHELL);
  measureAgainst(stand(SHELL, { problem: 'too narrow' }));
  expect(question.against).toBeNull();
  measureAgainst(stand(SHELL, { refused: 'too slender' }));
  expect(question.against).toBeNull();
});

test('what is shown lies between 100 Hz and what is solved', () => {
  const { question, hear } = airAtHand();
  question.frequency = 20;
  expect(question.shownFrequency).toBe(100);
  question.frequency = 16000;
  expect(question.shownFrequency, 'by a draft').toBe(3000);
  hear(stand(PLATE, { solvedTo: 7000 }));
  expect(question.shownFrequency).toBe(7000);
  expect(question.fullySolvedTo).toBe(7000);
  hear(stand(PLATE, { solvedTo: 2000, accuracy: 'draft' }));
  expect(question.shownFrequency).toBe(3000);
  expect(question.fullySolvedTo).toBe(10000);
  question.frequency = 440;
  expect(question.shownFrequency).toBe(440);
});
