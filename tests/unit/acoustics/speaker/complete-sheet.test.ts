import { expect, test } from 'vitest';
import { completeSheet } from '../../../../src/lib/acoustics/speaker/complete-sheet.js';
import { readSheet } from '../../../../src/lib/acoustics/speaker/read-sheet.js';
import type { Motor } from '../../../../src/lib/acoustics/speaker/speaker.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { AIR } from '../../../helpers/demo-installations.js';

const { motor } = SPEAKERS.oval;

test('takes as few figures as will do, the coil first', () => {
  expect(completeSheet({ sd: 6e-4 }, motor, AIR)).toEqual(['re', 'qms', 'mms', 'bl', 'cms']);
  expect(completeSheet({ sd: 6e-4, fs: 400, qts: 1.5, vas: 15e-6 }, motor, AIR)).toEqual(['re', 'qms']);
  expect(completeSheet({ sd: 6e-4, fs: 400, qms: 3, qes: 2, re: 7, mms: 0.5e-3 }, motor, AIR)).toEqual([]);
});

test('passes over what cannot be beside the sheet: a total Q above the other speaker’s mechanical one', () => {
  const sheet = { sd: 6e-4, fs: 400, re: 7, qts: 4, mms: 0.5e-3 };
  const taken = completeSheet(sheet, motor, AIR);
  expect(taken).not.toContain('qms');
  const more = Object.fromEntries(taken.map((figure) => [figure, motor[figure as keyof Motor]]));
  expect(readSheet({ ...sheet, ...more }, AIR).contradictions).toEqual([]);
});
