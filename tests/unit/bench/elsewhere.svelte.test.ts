import { flushSync } from 'svelte';
import { afterEach, expect, test } from 'vitest';
import { PLACES } from '../../../src/lib/acoustics/listener.js';
import { Bench } from '../../../src/lib/bench/bench.svelte.js';
import { Elsewhere } from '../../../src/lib/bench/elsewhere.svelte.js';
import { solveShelf } from '../../../src/lib/bench/solve-shelf.svelte.js';
import type { Known, Question, Wish } from '../../../src/lib/evaluation/wave-jobs.js';
import { type HeardWaves, hearWaves } from '../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../src/lib/waves/wave-solution.js';

let end = (): void => undefined;
afterEach(() => end());

/** A draft of each mount, solved once, that is given out as whatever a test says. */
const solved = new Map<string, HeardWaves>();
function heard({ installation, air, listener }: Question): HeardWaves {
  const key = JSON.stringify([installation.mount, installation.board, listener]);
  const known = solved.get(key) ?? hearWaves(solveMount(installation, air, { accuracy: 'draft' }), listener);
  solved.set(key, known);
  return known;
}

/** The demo bench with two mounts, and what is known in each place. */
function atHand() {
  let known = $state<Record<'hand' | 'layout', 'draft' | 'full' | null>>({ hand: null, layout: null });
  const waves = {
    best: (question: Question): Known | null => {
      const accuracy = known[question.listener.board ? 'layout' : 'hand'];
      return accuracy && { accuracy, heard: heard(question) };
    },
    refusal: () => null
  };
  const bench = new Bench(undefined, waves);
  while (bench.stands.length > 2) bench.remove();
  const elsewhere = new Elsewhere(bench, waves);
  const wanted: Wish[][] = [];
  const want = (wishes: readonly Wish[]): void => void wanted.push([...wishes]);
  end = $effect.root(() => solveShelf(bench, { want }, () => true, elsewhere));
  const know = (part: Partial<typeof known>): void => {
    known = { ...known, ...part };
    flushSync();
  };
  flushSync();
  return { bench, elsewhere, wanted, know };
}

test('the other place is asked for when all is known of this one, behind it and at leisure', () => {
  const { elsewhere, wanted, know, bench } = atHand();
  expect(elsewhere.stands).toEqual([]);
  know({ hand: 'draft' });
  expect(elsewhere.stands).toEqual([]);
  know({ hand: 'full' });
  expect(elsewhere.stands.map(({ installation }) => installation.board?.facing)).toEqual(['up', 'up']);
  expect(wanted.at(-1)!.map(({ atLeisure, listener }) => [atLeisure, listener.board])).toEqual([
    [undefined, undefined],
    [undefined, undefined],
    [true, true],
    [true, true]
  ]);
  expect(elsewhere.known).toBe(false);
  know({ layout: 'full' });
  expect(elsewhere.known).toBe(true);
  // While a size is dragged nothing is asked for that nobody hears.
  bench.dragging = true;
  flushSync();
  expect(wanted.at(-1)!.length).toBe(2);
  expect(elsewhere.known).toBe(false);
});

test('it is the place where one listened last', () => {
  const { elsewhere, know, bench } = atHand();
  know({ hand: 'full', layout: 'full' });
  expect(bench.elsewhere).toEqual(PLACES.layout);
  bench.setListener({ angleDeg: 30 });
  bench.listenOn('layout');
  expect(bench.elsewhere).toEqual({ angleDeg: 30, plane: 'width' });
  expect(elsewhere.stands.map(({ installation }) => installation.board)).toEqual([undefined, undefined]);
});

test('the rule of thumb, which knows one place, asks for none', () => {
  const { elsewhere, know, bench } = atHand();
  know({ hand: 'full', layout: 'full' });
  bench.setModel('rule');
  expect([elsewhere.stands, elsewhere.known]).toEqual([[], false]);
});
