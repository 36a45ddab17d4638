import { expect, test } from 'vitest';
import { noteName } from '../../../../src/lib/sounds/blocks/note-name.js';

test('octaves are counted from C', () => {
  expect([-24, -10, -9, -1, 0, 2, 3, 6, 13, 15].map(noteName)).toEqual([
    'A2',
    'B3',
    'C4',
    'A♭4',
    'A4',
    'B4',
    'C5',
    'E♭5',
    'B♭5',
    'C6' // oxfmt-ignore
  ]);
});
