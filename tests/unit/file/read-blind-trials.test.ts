import { expect, test } from 'vitest';
import { demoBench } from '../../../src/lib/file/demo-bench.js';
import { readBenchFile } from '../../../src/lib/file/read-bench-file.js';
import { writeBenchFile } from '../../../src/lib/file/write-bench-file.js';
import { blindRun } from '../../helpers/blind-run.js';

const RUN = blindRun({ answers: [{ behind: [0, 1, 0], said: 'C' }] });

function read(change: Record<string, unknown>): string | null {
  const text = JSON.stringify({ ...demoBench(), trials: [{ ...RUN, ...change }] });
  try {
    readBenchFile(text);
    return null;
  } catch (error) {
    return (error as Error).message;
  }
}

test('runs of blind trials are kept as they are', () => {
  const bench = { ...demoBench(), trials: [RUN, { ...RUN, ended: 'early' as const }] };
  expect(readBenchFile(writeBenchFile(bench)).trials).toEqual(bench.trials);
});

test.each([
  [{}, null],
  [{ question: 'best' }, 'trials[0].question must be "same" or "like" or "better", got "best"'],
  [{ planned: 61 }, 'trials[0].planned must be within 1 … 60 trials, got 61'],
  [{ mounts: ['a'], places: [0] }, 'trials[0]: mounts must be two, got 1'],
  [{ mounts: ['a', 'b', 'c'], places: [0, 1, 2] }, 'trials[0]: mounts must be two, got 3'],
  [{ places: [0] }, 'trials[0]: places must be as many as mounts, got 1'],
  [
    { planned: 1, answers: [RUN.answers[0], RUN.answers[0]] },
    'trials[0]: answers must be at most as many as planned, got 2'
  ],
  [{ answers: [{ behind: [0, 1], said: 'C' }] }, 'trials[0]: answers[0].behind must be 3 places in mounts'],
  [
    { answers: [{ behind: [0, 1, 2], said: 'C' }] },
    'trials[0]: answers[0].behind must be 3 places in mounts'
  ],
  [{ answers: [{ behind: [0, 1, 0], said: 'A' }] }, 'trials[0]: answers[0].said must be B or C, got A'],
  [{ ended: 'late' }, 'trials[0].ended must be "early" or "changed", got "late"']
])('what a run cannot be is refused: %j', (change, sentence) => {
  expect(read(change)).toBe(sentence);
});
