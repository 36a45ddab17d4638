import { expect, test } from 'vitest';
import { demoBench } from '../../../../../src/lib/file/demo-bench.js';
import { turnWords } from '../../../../../src/lib/screens/parts/words/turn-words.js';

const { setups } = demoBench();

test('names both mounts and both leads, in whole decibels', () => {
  const pair = { hand: { index: 1, byDb: 4.3 }, layout: { index: 3, byDb: 5.1 } };
  expect(turnWords(pair, setups)).toBe(
    'In the hand the flat plate is 4 dB ahead of the closed box, on the layout 5 dB behind it.'
  );
});

test('free air is no thing, and a long name is shortened', () => {
  const pair = { hand: { index: 0, byDb: 0.5 }, layout: { index: 1, byDb: 2 } };
  const long = setups.with(1, { ...setups[1], name: 'A plate of black card that was once a folder' });
  expect(turnWords(pair, long)).toMatch(
    /In the hand free air is 1 dB ahead of the a plate of .*…a folder, on the layout 2 dB behind it\./
  );
});

test('says that nothing turns over, and nothing as long as that is not known', () => {
  expect(turnWords(null, setups)).toBe('The order is the same in the hand and on the layout.');
  expect(turnWords(undefined, setups)).toBe('');
});
