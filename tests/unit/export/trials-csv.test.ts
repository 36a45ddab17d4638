import { expect, test } from 'vitest';
import { trialsCsv } from '../../../src/lib/export/trials-csv.js';
import type { BlindRun } from '../../../src/lib/file/blind-run.js';

const RUN: BlindRun = {
  question: 'like',
  mounts: ['Plate, "open"', 'Box'],
  places: [0, 1],
  sound: 'No. 41',
  planned: 2,
  seed: 1,
  bench: 'm',
  answers: [
    { behind: [0, 1, 0], said: 'C' },
    { behind: [1, 1, 0], said: 'C' }
  ]
};

test('every answered trial is a row, with what stood behind its letters', () => {
  const early: BlindRun = {
    ...RUN,
    question: 'same',
    answers: [{ behind: [1, 1], said: 'same' }],
    ended: 'early'
  };
  expect(trialsCsv([RUN, early]).split('\n')).toEqual([
    'run,question,sound,planned,ended,trial,behind_a,behind_b,behind_c,said',
    '1,like,No. 41,2,whole,1,"Plate, ""open""",Box,"Plate, ""open""",C',
    '1,like,No. 41,2,whole,2,Box,Box,"Plate, ""open""",C',
    '2,same,No. 41,2,early,1,Box,Box,,same',
    ''
  ]);
});
