import { expect, test } from 'vitest';
import { demoBench } from '../../../../../src/lib/file/demo-bench.js';
import { turnWords } from '../../../../../src/lib/screens/parts/words/turn-words.js';

const { setups } = demoBench();

test('names both mounts and both leads, in whole decibels', () => {
  const pair = { hand: { index: 1, byDb: 4.3 }, layout: { index: 3, byDb: 5.1 } };
  expect(turnWords(pair, setups)).toBe(
    'In the hand the flat plate is ahead by 4 dB, on the layout the closed box by 5.'
  );
});

test('free air is no thing, and a long name is shortened', () => {
  const pair = { hand: { index: 0, byDb: 0.5 }, layout: { index: 1, byDb: 2 } };
  const long = setups.with(1, { ...setups[1], name: 'A plate of black card that was once a folder' });
  expect(turnWords(pair, long)).toMatch(
    /In the hand free air is ahead by 1 dB, on the layout the a plate of .*…/
  );
});

test('says that nothing turns over, and nothing as long as that is not known', () => {
  expect(turnWords(null, setups)).toBe('The order is the same in the hand and on the layout.');
  expect(turnWords(undefined, setups)).toBe('');
});
