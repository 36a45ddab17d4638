import { expect, test } from 'vitest';
import { trialsCsv } from '../../../src/lib/export/trials-csv.js';
import type { BlindRun } from '../../../src/lib/file/blind-run.js';
import { blindRun } from '../../helpers/blind-run.js';

const RUN = blindRun({
  mounts: ['Plate, "open"', 'Box'],
  planned: 2,
  answers: [
    { behind: [0, 1, 0], said: 'C' },
    { behind: [1, 1, 0], said: 'C' }
  ]
});

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
