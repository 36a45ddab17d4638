import { flushSync } from 'svelte';
import { afterEach, expect, test } from 'vitest';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { behindLetters } from '../../../../src/lib/bench/votes/hall-vote.js';
import { Votes } from '../../../../src/lib/bench/votes/votes.svelte.js';
import type { BenchFile } from '../../../../src/lib/file/bench-file.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { readBenchFile } from '../../../../src/lib/file/read-bench-file.js';
import { writeBenchFile } from '../../../../src/lib/file/write-bench-file.js';

const ends: (() => void)[] = [];
afterEach(() => ends.splice(0).forEach((end) => end()));

/** Hall votes on the demo bench whose sounding notes what it is told. */
function votesAtHand(file: BenchFile = demoBench()) {
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
      listenBlind: (places: readonly number[] | null, { levelled = true } = {}) =>
        void told.push(`blind ${places ? `${places.join()} ${levelled ? 'alike' : 'driven'}` : 'no more'}`),
      hearBlindly: (place: number) => void told.push(`hear ${place}`)
    }
  };
  let seed = 6;
  const trials = { run: null as unknown };
  const votes = new Votes({ bench, sounding, trials, chance: () => ++seed, today: () => '2026-11-30' });
  ends.push($effect.root(() => votes.connect()));
  flushSync();
  /** Presses these keys, one after the other. */
  const press = (keys: string): void => {
    for (const key of keys.split(' ')) {
      if (key === 'on') votes.goOn();
      else if (key === 'back') votes.goBack();
      else if (key === 'leave') votes.leave();
      else if (key === '+') votes.count(1);
      else if (key === '-') votes.count(-1);
      else if (/^\d$/.test(key)) votes.type(Number(key));
      else votes.hear('ABCDEF'.indexOf(key));
      flushSync();
    }
  };
  /** Opens the vote on these places and begins. */
  const begin = (places: number[] = [1, 2, 3], sameLoudness = true): void => {
    votes.open();
    votes.wish = { ...votes.wish, places, sameLoudness };
    press('on');
  };
  return { bench, votes, sounding, levels, trials, told, press, begin };
}

/** Where each letter leads, as places among the setups. */
const behind = ({ votes }: ReturnType<typeof votesAtHand>): number[] =>
  behindLetters(votes.round!).map((place) => votes.round!.places[place]);

test('a round hears what is behind a letter, brings its mounts to one loudness or leaves them, and says nothing of it on the bench', () => {
  const all = votesAtHand();
  const { bench, votes, told, press, begin } = all;
  const { heard } = bench.file.view;
  begin();
  const [a, b, c] = behind(all);
  expect([a, b, c].toSorted()).toEqual([1, 2, 3]);
  expect(told).toEqual(['blind 1,2,3 alike', `hear ${a}`]);
  expect([votes.screen, votes.letters.join('')]).toEqual(['round', 'ABC']);
  press('C B D');
  expect(told.slice(2)).toEqual([`hear ${c}`, `hear ${b}`]);
  expect(votes.heard).toEqual([true, true, true]);
  votes.step(1);
  votes.step(1);
  expect(told.slice(4)).toEqual([`hear ${c}`, `hear ${a}`]);
  expect(bench.file.view.heard).toBe(heard);
  // Hands are counted in their own time.
  press('+ 5');
  expect(votes.round!.hands).toEqual([null, null, null]);

  const other = votesAtHand();
  other.begin([0, 3], false);
  expect(other.told[0]).toBe('blind 0,3 driven');
});

test('hands are typed or counted up and down, letter by letter; the names come by a step of their own', () => {
  const { votes, press, begin, bench } = votesAtHand();
  begin();
  press('on 1 2 on + + + - on');
  expect(votes.round).toMatchObject({ stage: 'count', hands: [12, 2, null] });
  press('on');
  expect(votes.round).toMatchObject({ stage: 'counted', hands: [12, 2, 0] });
  press('+ 7');
  expect(votes.round!.hands).toEqual([12, 2, 0]);
  press('on');
  expect(votes.round!.stage).toBe('shown');
  expect(bench.file.votes).toMatchObject([
    {
      question: 'Which sounds fullest?',
      mounts: ['Flat plate', 'Cab body', 'Closed box'],
      sound: demoBench().sound.name,
      place: 'hand',
      model: 'rule',
      sameLoudness: true,
      day: '2026-11-30',
      hands: [12, 2, 0]
    }
  ]);
  expect(bench.file.votes![0]).not.toHaveProperty('seen');
});

test('a letter that is heard once more after the count is counted once more', () => {
  const { votes, press, begin } = votesAtHand();
  begin([1, 3]);
  press('on 1 on 2 on A');
  expect(votes.round).toMatchObject({ stage: 'count', hands: [1, 2] });
  press('5 on on');
  expect(votes.round).toMatchObject({ stage: 'shown', hands: [5, 2] });
});

test('a number is typed anew after another letter, takes three digits, and back takes the last one away', () => {
  const { votes, press, begin } = votesAtHand();
  begin();
  press('on 1 2 3 4');
  expect(votes.round!.hands[0]).toBe(123);
  press('back');
  expect(votes.round!.hands[0]).toBe(12);
  press('back back');
  expect(votes.round!.hands[0]).toBe(0);
  press('B 4 A 5');
  expect(votes.round!.hands).toEqual([5, 4, null]);
  press('- - - - - -');
  expect(votes.round!.hands[0]).toBe(0);
});

test('from every slip one key leads back', () => {
  const { votes, press, begin } = votesAtHand();
  begin([1, 3]);
  // Hands for A were given to B.
  press('on 4 on back');
  expect([votes.letter, votes.round!.stage]).toEqual([0, 'count']);
  press('back');
  expect(votes.round!.stage).toBe('hear');
  // Counted too early, then shown too early: what was seen is kept.
  press('on on 6 on back');
  expect(votes.round).toMatchObject({ stage: 'count', hands: [4, 6] });
  press('on on');
  expect([votes.letter, votes.round!.stage]).toEqual([1, 'shown']);
  press('back');
  expect(votes.round).toMatchObject({ stage: 'counted', seen: true });
  press('on');
  // Another round begun too early: it goes, and the names are there again.
  press('on');
  expect([votes.rounds.length, votes.round!.stage]).toEqual([2, 'hear']);
  press('back');
  expect([votes.rounds.length, votes.round!.stage, votes.screen]).toEqual([1, 'shown', 'round']);
  // Left too early.
  press('leave');
  expect(votes.screen).toBe('rounds');
  press('back');
  expect([votes.screen, votes.round!.stage]).toEqual(['round', 'shown']);
});

test('a round that is broken off is kept and can go on; without a hand it leaves nothing', () => {
  const { bench, votes, press, begin } = votesAtHand();
  begin([1, 3]);
  press('on 4 leave');
  expect([votes.screen, votes.round, votes.rounds[0].ended]).toEqual(['rounds', null, 'early']);
  press('back');
  expect(votes.round).toMatchObject({ stage: 'count', hands: [4, null] });
  expect(votes.rounds[0]).not.toHaveProperty('ended');
  press('leave on');
  expect(votes.screen).toBe('plan');
  press('on');
  expect(votes.rounds).toHaveLength(2);
  press('leave');
  expect([votes.screen, votes.rounds.length]).toEqual(['rounds', 1]);
  press('leave');
  expect(votes.shown).toBe(false);
  const fresh = votesAtHand();
  fresh.begin();
  fresh.press('back');
  expect([fresh.votes.screen, 'votes' in fresh.bench.file]).toEqual(['plan', false]);
  fresh.press('on leave');
  expect([fresh.votes.shown, 'votes' in fresh.bench.file]).toEqual([false, false]);
  expect(bench.file.votes).toHaveLength(1);
});

test('another round binds the letters anew, and is one step back', () => {
  const all = votesAtHand();
  const { bench, votes, press, begin } = all;
  const orders = new Set<string>();
  begin();
  for (let i = 0; i < 12; i++) {
    orders.add(behind(all).join());
    press('on 1 on on on on on');
  }
  expect(votes.rounds).toHaveLength(13);
  expect(new Set(votes.rounds.map(({ seed }) => seed)).size).toBe(13);
  expect(orders.size).toBeGreaterThan(3);
  press('on 1 on on on on leave leave');
  bench.undo();
  expect(votes.rounds).toHaveLength(12);
  bench.redo();
  expect(votes.rounds.at(-1)).toMatchObject({ stage: 'shown', hands: [1, 0, 0] });
});

test('a page that is loaded anew in the middle of a round goes on with it, at its stage and with its hands', () => {
  const first = votesAtHand();
  first.begin();
  first.press('on 7');
  const again = votesAtHand(readBenchFile(writeBenchFile(first.bench.file)));
  expect(again.votes.screen).toBe('round');
  expect(again.votes.round).toMatchObject({ stage: 'count', hands: [7, null, null] });
  expect(behind(again)).toEqual(behind(first));
  expect(again.told).toEqual(['blind 1,2,3 alike', `hear ${behind(first)[0]}`]);
  first.press('on 1 on 1 on');
  expect(votesAtHand(readBenchFile(writeBenchFile(first.bench.file))).votes.round!.stage).toBe('counted');
  // Once the names have been shown, there is nothing to hide from a page that is loaded anew.
  first.press('on');
  expect(votesAtHand(readBenchFile(writeBenchFile(first.bench.file))).votes.shown).toBe(false);
});

test('a change of the bench ends the round, and says so; there is no way back into it', () => {
  const { bench, votes, told, press, begin } = votesAtHand();
  begin();
  press('on 3');
  bench.setTemperature(30);
  flushSync();
  expect([votes.screen, votes.round, votes.rounds[0].ended]).toEqual(['rounds', null, 'changed']);
  expect(told.at(-1)).toBe('blind no more');
  press('back');
  expect(votes.screen).toBe('rounds');
});

test('names that have been shown go into the table where the bench is changed behind them', () => {
  const { bench, votes, press, begin } = votesAtHand();
  begin([2, 3]);
  press('on 3 on on on');
  expect(votes.screen).toBe('round');
  bench.hear(3);
  bench.remove();
  flushSync();
  expect([votes.screen, votes.round, votes.rounds[0].stage]).toEqual(['rounds', null, 'shown']);
  press('back');
  expect(votes.screen).toBe('rounds');
});

test('what cannot be voted on is said in a sentence, and does not begin', () => {
  const { bench, votes, levels, sounding, press } = votesAtHand();
  votes.open();
  expect([votes.wish.places.length, votes.obstacle]).toEqual([2, null]);
  const wish = votes.wish;
  const refused = (change: Partial<typeof wish>): string | null => {
    votes.wish = { ...wish, ...change };
    press('on');
    expect(votes.round).toBeNull();
    return votes.obstacle;
  };
  expect(refused({ places: [2] })).toBe('Choose two mounts or more.');
  expect(refused({ question: '  ' })).toBe('The hall needs a question.');
  levels[3] = -Infinity;
  expect(refused({ places: [1, 3] })).toBe(
    'Closed box is silent on this sound: there is nothing to compare.'
  );
  levels[3] = -60;
  expect(refused({ places: [1, 3] })).toMatch(/^They are more than 30 dB apart/);
  votes.wish = { ...wish, places: [1, 3], sameLoudness: false };
  expect(votes.obstacle).toBeNull();
  sounding.settled = false;
  press('on');
  expect(votes.round).toBeNull();
  const { oval } = bench.file.speakers;
  bench.revise((file) => ({ ...file, speakers: { oval: { ...oval, depth: 0.03 } } }));
  expect(refused({ places: [1, 3] })).toBe('Closed box cannot be built as it stands.');
  while (bench.file.setups.length > 1) bench.remove();
  expect(refused({ places: [0] })).toMatch(/^There is one mount only/);
});

test('no hand at all is no count', () => {
  const { votes, press, begin } = votesAtHand();
  begin([1, 3]);
  press('on on on');
  expect([votes.round!.stage, votes.note]).toEqual(['count', 'No hand has been counted yet.']);
  press('2');
  expect(votes.note).toBeNull();
  press('on');
  expect(votes.round!.stage).toBe('counted');
});

test('a blind run goes before a vote', () => {
  const first = votesAtHand();
  first.begin();
  const file = readBenchFile(writeBenchFile(first.bench.file));
  const bench = new Bench(file);
  const votes = new Votes({
    bench,
    sounding: first.sounding,
    trials: { run: {} },
    chance: () => 1,
    today: () => '2026-11-30'
  });
  expect(votes.shown).toBe(false);
});
