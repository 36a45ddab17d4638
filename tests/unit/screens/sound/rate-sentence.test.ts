import { expect, test } from 'vitest';
import { rateSentence } from '../../../../src/lib/screens/sound/rate-sentence.js';

const firing = { name: 'firing rate', frequency: 70 };

test('a rate below the reach: what is lost, and the first multiple that is heard', () => {
  expect(rateSentence(firing, -52.6, 287)).toBe(
    'Too low for this speaker here: the firing rate, 70 Hz; 53 dB of it are lost. You hear its multiples from the 5th on, 350 Hz, and the ear makes out the rate from them.'
  );
});

test('a rate within the reach is heard itself', () => {
  expect(rateSentence({ name: 'A4', frequency: 440 }, -3, 287)).toBe(
    'Within what this speaker can do here (down to 290 Hz): A4, 440 Hz. You hear it itself.'
  );
});

test('a very slow rate is a beat, not a note', () => {
  expect(rateSentence({ name: 'exhaust beat', frequency: 4.25 }, -120, 287)).toContain(
    'Too low for this speaker here: the exhaust beat, 4.3 Hz;'
  );
  expect(rateSentence({ name: 'exhaust beat', frequency: 4.25 }, -120, 287)).toContain(
    'You hear how often it comes, not a note.'
  );
});

test.each([
  [100, 290, '3rd'],
  [100, 190, '2nd'],
  [25, 287, '12th'],
  [26, 300, '12th']
])('%i Hz and a reach of %i Hz: from the %s on', (frequency, reaches, ordinal) => {
  expect(rateSentence({ name: 'rate', frequency }, -30, reaches)).toContain(`from the ${ordinal} on`);
});

test('a mount that reaches nowhere or cannot be built claims nothing', () => {
  expect(rateSentence(firing, null, 287)).toBe('Marked in the picture: the firing rate, 70 Hz.');
  expect(rateSentence(firing, -20, null)).toBe('Marked in the picture: the firing rate, 70 Hz.');
});
