import { expect, test } from 'vitest';
import { demoBench } from '../../../src/lib/file/demo-bench.js';
import { readBenchFile } from '../../../src/lib/file/read-bench-file.js';
import { writeBenchFile } from '../../../src/lib/file/write-bench-file.js';
import { voteRound } from '../../helpers/vote-round.js';

const ROUND = voteRound({ stage: 'count', hands: [12, null] });

function read(change: Record<string, unknown>): string | null {
  const text = JSON.stringify({ ...demoBench(), votes: [{ ...ROUND, ...change }] });
  try {
    readBenchFile(text);
    return null;
  } catch (error) {
    return (error as Error).message;
  }
}

test('rounds of hall votes are kept as they are', () => {
  const shown = voteRound({
    stage: 'shown',
    hands: [12, 0],
    seen: true,
    noise: 'clubNight',
    place: 'layout'
  });
  const bench = { ...demoBench(), votes: [shown, { ...ROUND, ended: 'early' as const }, ROUND] };
  expect(readBenchFile(writeBenchFile(bench)).votes).toEqual(bench.votes);
});

test('a file of version 6 has no rounds', () => {
  expect(readBenchFile(JSON.stringify({ ...demoBench(), version: 6 }))).toEqual(demoBench());
});

test.each([
  [{}, null],
  [{ question: '' }, 'votes[0].question must not be empty, got ""'],
  [
    { question: 'W'.repeat(81) },
    `votes[0].question must be at most 80 characters long, got "${'W'.repeat(40)}…"`
  ],
  [{ hands: [1000, null] }, 'votes[0].hands[0] must be within 0 … 999 hands, got 1000'],
  [{ hands: [1.5, null] }, 'votes[0].hands[0] must be a whole number from 0, got 1.5'],
  [{ hands: [1] }, 'votes[0]: hands must be as many as mounts, got 1'],
  [{ places: [0] }, 'votes[0]: places must be as many as mounts, got 1'],
  [{ mounts: ['a'], places: [0], hands: [1] }, 'votes[0]: mounts must be 2 … 6, got 1'],
  [{ day: 'Monday' }, 'votes[0].day must be a day such as 2026-11-30, got "Monday"'],
  [{ place: 'hall' }, 'votes[0].place must be "hand" or "layout", got "hall"'],
  [{ stage: 'shown' }, 'votes[0]: hands must be counted for every letter once stage is "shown"'],
  [{ stage: 'counted', hands: [0, 0] }, 'votes[0]: hands must be one or more once stage is "counted"'],
  [
    { stage: 'shown', hands: [3, 4], ended: 'changed' },
    'votes[0]: ended must be absent once stage is "shown", got "changed"'
  ]
])('what a round cannot be is refused: %j', (change, sentence) => {
  expect(read(change)).toBe(sentence);
});
