import { flushSync } from 'svelte';
import { afterEach, expect, test } from 'vitest';
import { Bench } from '../../../src/lib/bench/bench.svelte.js';
import { solveShelf } from '../../../src/lib/bench/solve-shelf.svelte.js';
import type { Wish } from '../../../src/lib/evaluation/wave-jobs.js';

let end = (): void => undefined;
afterEach(() => end());

/** The demo bench, whether its first sound has begun, and the places that were wanted, each time. */
function shelf() {
  const bench = new Bench();
  let begun = $state(false);
  const wanted: number[][] = [];
  const want = (wishes: readonly Wish[]): void => void wanted.push(wishes.map(({ place }) => place));
  end = $effect.root(() => solveShelf(bench, { want }, () => begun));
  flushSync();
  const begin = (on: boolean): void => {
    begun = on;
    flushSync();
  };
  return { bench, wanted, begin };
}

test('nothing is solved before the first sound has begun; then all, what is heard first', () => {
  const { bench, wanted, begin } = shelf();
  expect(wanted).toEqual([]);
  bench.hear(2);
  flushSync();
  expect(wanted).toEqual([]);
  begin(true);
  expect(wanted).toEqual([[2, 0, 1, 3]]);
});

test('a sound that is made anew holds nothing up any more', () => {
  const { bench, wanted, begin } = shelf();
  begin(true);
  begin(false);
  bench.hear(1);
  flushSync();
  expect(wanted.at(-1)).toEqual([1, 0, 2, 3]);
});

test('by the rule of thumb nothing is to be solved', () => {
  const { bench, wanted, begin } = shelf();
  bench.setModel('rule');
  begin(true);
  expect(wanted).toEqual([[]]);
});
