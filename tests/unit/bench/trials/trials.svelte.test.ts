import { flushSync } from 'svelte';
import { afterEach, expect, test } from 'vitest';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { behindNow } from '../../../../src/lib/bench/trials/blind-run.js';
import { Trials } from '../../../../src/lib/bench/trials/trials.svelte.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { writeBenchFile } from '../../../../src/lib/file/write-bench-file.js';
import { readBenchFile } from '../../../../src/lib/file/read-bench-file.js';

const ends: (() => void)[] = [];
afterEach(() => ends.splice(0).forEach((end) => end()));

/** Blind trials on the demo bench whose sounding notes what it is told. */
function trialsAtHand(file = demoBench()) {
  const bench = new Bench({ ...file, view: { ...file.view, model: 'rule' } });
  const told: string[] = [];
  const levels: (number | null)[] = [-30, -25, -24, -20];
  let settled = $state(true);
  const sounding = {
    get settled() {
      return settled;
    },
    set settled(is: boolean) {
      settled = is;
    },
    levels: { loudnessOf: (place: number) => levels[place] },
    hearing: {
      listenBlind: (places: readonly number[] | null) =>
        void told.push(`blind ${places?.join() ?? 'no more'}`),
      hearBlindly: (place: number) => void told.push(`hear ${place}`)
    }
  };
  const trials = new Trials({ bench, sounding, chance: () => 7 });
  ends.push($effect.root(() => trials.connect()));
  flushSync();
  return { bench, trials, sounding, levels, told };
}

const WISH = { question: 'same' as const, places: [1, 3], planned: 8 };

test('each trial begins with the first letter, and hears what stands behind a letter without a word of it on the bench', () => {
  const { bench, trials, told } = trialsAtHand();
  expect(trials.shown).toBe(false);
  trials.open();
  const { heard } = bench.file.view;
  trials.begin(WISH);
  flushSync();
  const [a, b] = behindNow(trials.run!).map((place) => WISH.places[place]);
  expect(told).toEqual(['blind no more', 'blind 1,3', `hear ${a}`]);
  expect(trials.heardAll).toBe(false);
  trials.hear(1);
  expect(told.at(-1)).toBe(`hear ${b}`);
  expect([trials.heardAll, trials.letter]).toEqual([true, 1]);
  trials.hear(2);
  expect(told).toHaveLength(4);
  trials.answer('same');
  flushSync();
  expect([trials.letter, trials.heardAll, trials.run!.answers.length]).toEqual([0, false, 1]);
  expect(told.at(-1)).toBe(`hear ${WISH.places[behindNow(trials.run!)[0]]}`);
  expect(bench.file.view.heard).toBe(heard);
});

test('nothing is answered before all has been heard, nor while it is being worked out', () => {
  const { trials, sounding } = trialsAtHand();
  trials.begin(WISH);
  flushSync();
  trials.answer('same');
  expect(trials.run!.answers).toEqual([]);
  trials.hear(1);
  sounding.settled = false;
  trials.answer('same');
  expect([trials.ready, trials.run!.answers.length]).toEqual([false, 0]);
  sounding.settled = true;
  trials.answer('same');
  expect(trials.run!.answers).toHaveLength(1);
});

test('the page is blind until the run is over, then tells what came of it; the run is one step back', () => {
  const { bench, trials, told } = trialsAtHand();
  trials.begin(WISH);
  flushSync();
  trials.leave();
  expect(trials.shown).toBe(true);
  for (let i = 0; i < 8; i++) {
    expect(trials.told).toBeNull();
    trials.hear(1);
    trials.answer('different');
    flushSync();
  }
  expect([trials.run, trials.told, trials.kept.length, told.at(-1)]).toEqual([null, 0, 1, 'blind no more']);
  trials.leave();
  expect(trials.shown).toBe(false);
  bench.undo();
  expect(bench.file.trials).toBeUndefined();
  bench.redo();
  expect(bench.file.trials![0].answers).toHaveLength(8);
});

test('a page that is loaded anew in mid-trial goes on with the very trial', () => {
  const first = trialsAtHand();
  first.trials.begin(WISH);
  flushSync();
  first.trials.hear(1);
  first.trials.answer('same');
  flushSync();
  const { trials, told, bench } = trialsAtHand(readBenchFile(writeBenchFile(first.bench.file)));
  expect([trials.shown, trials.run!.answers.length]).toEqual([true, 1]);
  expect(behindNow(trials.run!)).toEqual(behindNow(first.trials.run!));
  expect(told.at(-1)).toBe(`hear ${WISH.places[behindNow(trials.run!)[0]]}`);
  expect(bench.file.trials![0].ended).toBeUndefined();
});

test('stopping early is recorded; a change of the bench ends the run and says so', () => {
  const { trials } = trialsAtHand();
  trials.begin(WISH);
  flushSync();
  trials.stop();
  flushSync();
  expect([trials.run, trials.kept[0].ended, trials.told]).toEqual([null, 'early', 0]);

  const { bench, trials: others } = trialsAtHand();
  others.begin(WISH);
  flushSync();
  bench.setTemperature(30);
  flushSync();
  expect([others.run, others.kept[0].ended, others.told, others.shown]).toEqual([null, 'changed', 0, true]);
});

test('what cannot be compared is said in a sentence', () => {
  const { bench, trials, levels } = trialsAtHand();
  expect(trials.obstacle([1, 3])).toBeNull();
  levels[3] = -Infinity;
  expect(trials.obstacle([1, 3])).toBe('Closed box is silent on this sound: there is nothing to compare.');
  levels[3] = -60;
  expect(trials.obstacle([1, 3])).toBe(
    'They are more than 30 dB apart on this sound. So far apart they are not brought to one loudness.'
  );
  levels[3] = null;
  expect(trials.obstacle([1, 3])).toBeNull();
  const { oval } = bench.file.speakers;
  bench.revise((file) => ({ ...file, speakers: { oval: { ...oval, depth: 0.03 } } }));
  expect(bench.stands[3].problem).not.toBeNull();
  expect(trials.obstacle([1, 3])).toBe('Closed box cannot be built as it stands.');
});
