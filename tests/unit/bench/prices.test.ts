import { expect, test } from 'vitest';
import { Bench } from '../../../src/lib/bench/bench.svelte.js';
import { withMountPrice, withSpeakerPrice, withWall } from '../../../src/lib/bench/prices.js';
import { priceOf } from '../../../src/lib/evaluation/price.js';
import { demoBench } from '../../../src/lib/file/demo-bench.js';
import { readBenchFile } from '../../../src/lib/file/read-bench-file.js';
import { writeBenchFile } from '../../../src/lib/file/write-bench-file.js';

const PLATE = 1;
const BOX = 3;

test('a setup costs its speakers and its mount; a box as much as one speaker unless told (common practice)', () => {
  const bare = demoBench();
  expect(bare.setups.map((setup) => priceOf(bare, setup))).toEqual([null, null, null, null]);
  const priced = withSpeakerPrice(bare, 'oval', 9);
  expect(bare.setups[BOX].mount.kind).toBe('box');
  expect(priced.setups.map((setup) => priceOf(priced, setup))).toEqual([
    { speakers: 9, mount: 0 },
    { speakers: 9, mount: 0 },
    { speakers: 9, mount: 0 },
    { speakers: 9, mount: 9 }
  ]);
  const told = withMountPrice(priced, BOX, 4);
  expect(priceOf(told, told.setups[BOX])).toEqual({ speakers: 9, mount: 4 });
  const two = {
    ...priced.setups[PLATE],
    second: { at: [0.05, 0], reversed: false, wiring: 'parallel' } as const
  };
  expect(priceOf(priced, two)).toEqual({ speakers: 18, mount: 0 });
});

test('prices and walls are kept in the file; what is told no more leaves nothing behind', () => {
  const told = withWall(withMountPrice(withSpeakerPrice(demoBench(), 'oval', 9.5), BOX, 4), BOX, 0.002);
  expect(readBenchFile(writeBenchFile(told))).toEqual(told);
  const untold = withWall(withMountPrice(withSpeakerPrice(told, 'oval', null), BOX, null), BOX, null);
  expect(untold).toEqual(demoBench());
});

test('what cannot be is refused in one sentence, and undo takes a price back', () => {
  const bench = new Bench();
  expect(bench.revise((file) => withSpeakerPrice(file, 'oval', -1))).toBe(
    'a price must be within 0 … 100000, got -1'
  );
  expect(bench.revise((file) => withMountPrice(file, BOX, 1e6))).toBe(
    'a price must be within 0 … 100000, got 1000000'
  );
  expect(bench.revise((file) => withWall(file, BOX, 0.05))).toBe(
    'thickness of the wall must be within 0.1 … 20 mm, got 50'
  );
  expect(bench.file).toEqual(demoBench());
  expect(bench.revise((file) => withSpeakerPrice(file, 'oval', 9))).toBeNull();
  bench.undo();
  expect(bench.file).toEqual(demoBench());
});
