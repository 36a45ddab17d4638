import { expect, test } from 'vitest';
import {
  behindNow,
  isSameBench,
  runUnderWay,
  withAnswer,
  withRun,
  withRunEnded
} from '../../../../src/lib/bench/trials/blind-run.js';
import { drawTrials } from '../../../../src/lib/bench/trials/draw-trials.js';
import { possibleCounts } from '../../../../src/lib/bench/trials/possible-counts.js';
import { runResult, saysAlwaysTheSame } from '../../../../src/lib/bench/trials/run-result.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { SAYINGS, type TrialQuestion } from '../../../../src/lib/file/blind-run.js';
import { readBenchFile } from '../../../../src/lib/file/read-bench-file.js';
import { writeBenchFile } from '../../../../src/lib/file/write-bench-file.js';
import { random } from '../../../../src/lib/sounds/blocks/random.js';
import { close } from '../../../helpers/close.js';

const begun = (question: TrialQuestion = 'same', places = [1, 3], planned = 16, seed = 41) =>
  withRun(demoBench(), { question, places, planned }, seed);

test('a run tells what is compared by its names, and is under way', () => {
  expect(runUnderWay(begun())).toMatchObject({
    mounts: ['Flat plate', 'Closed box'],
    places: [1, 3],
    planned: 16,
    sound: demoBench().sound.name,
    answers: []
  });
  expect(runUnderWay(demoBench())).toBeNull();
});

test('what is read back from a file in mid-run goes on with the very trial', () => {
  let file = begun('like');
  const all = drawTrials(runUnderWay(file)!);
  for (let i = 0; i < 16; i++) {
    file = readBenchFile(writeBenchFile(file));
    expect(behindNow(runUnderWay(file)!)).toEqual(all[i]);
    file = withAnswer(file, 'B');
  }
  expect(runUnderWay(file)).toBeNull();
  expect(file.trials![0].answers.map(({ behind }) => behind)).toEqual(all);
});

test('of two coins each comes as often as chance has it, whatever came before', () => {
  let [same, firstIsSecond, likeB, turns] = [0, 0, 0, 0];
  const RUNS = 500;
  const N = RUNS * 40;
  for (let seed = 0; seed < RUNS; seed++) {
    const drawn = { mounts: ['a', 'b'], planned: 40, seed };
    const pairs = drawTrials({ ...drawn, question: 'same' });
    same += pairs.filter(([a, b]) => a === b).length;
    firstIsSecond += pairs.filter(([a]) => a === 1).length;
    turns += pairs.filter(([a, b], i) => i > 0 && (a === b) === (pairs[i - 1][0] === pairs[i - 1][1])).length;
    likeB += drawTrials({ ...drawn, question: 'like' }).filter(([a, b]) => a === b).length;
  }
  for (const count of [same, firstIsSecond, likeB])
    close(count / N, 0.5, { abs: 2 / Math.sqrt(N), because: 'four standard deviations' });
  close(turns / (RUNS * 39), 0.5, { abs: 2 / Math.sqrt(N), because: 'four standard deviations' });
});

test('of several mounts each meets each equally often, in both orders', () => {
  const drawn = drawTrials({ question: 'better', mounts: ['a', 'b', 'c', 'd'], planned: 60, seed: 3 });
  const met = new Map<string, number>();
  for (const pair of drawn) {
    const key = pair.toSorted().join();
    met.set(key, (met.get(key) ?? 0) + 1);
  }
  expect([...met.values()]).toEqual([10, 10, 10, 10, 10, 10]);
  expect(drawn.filter(([a, b]) => a < b).length).toBeGreaterThan(15);
  expect(drawn.filter(([a, b]) => a > b).length).toBeGreaterThan(15);
  expect(possibleCounts(4)).toEqual([6, 12, 18, 24, 30, 36, 42, 48, 54, 60]);
});

/** A run answered to its end by somebody who knows what is behind the letters so often. */
function answered(question: TrialQuestion, knows: number, seed: number) {
  const chance = random(seed);
  let file = begun(question, [1, 3], 16, seed);
  for (let i = 0; i < 16; i++) {
    const behind = behindNow(runUnderWay(file)!);
    const right =
      question === 'same'
        ? SAYINGS.same[behind[0] === behind[1] ? 0 : 1]
        : question === 'like'
          ? SAYINGS.like[behind[1] === behind[0] ? 0 : 1]
          : SAYINGS.better[behind[0] === 0 ? 0 : 1];
    const other = SAYINGS[question].find((said) => said !== right)!;
    file = withAnswer(file, chance.uniform() < knows ? right : other);
  }
  return file.trials![0];
}

test('who knows is always right, who guesses is right by halves', () => {
  for (const question of ['same', 'like'] as const) {
    expect(runResult(answered(question, 1, 5))).toMatchObject({ kind: 'heard', right: 16, trials: 16 });
    let right = 0;
    for (let seed = 0; seed < 200; seed++) {
      const result = runResult(answered(question, 0.5, seed));
      right += result.kind === 'heard' ? result.right : NaN;
    }
    close(right / 3200, 0.5, { abs: 0.035, because: 'four standard deviations of 3200 coins' });
  }
  expect(runResult(answered('better', 1, 5))).toMatchObject({ kind: 'liked', first: 16, trials: 16 });
  expect(runResult(answered('better', 0, 5))).toMatchObject({ kind: 'liked', first: 0, trials: 16 });
});

test('one and the same answer throughout is right by halves, too, and is said', () => {
  let [right, runs] = [0, 0];
  for (let seed = 0; seed < 200; seed++) {
    let file = begun('same', [1, 3], 16, seed);
    for (let i = 0; i < 16; i++) file = withAnswer(file, 'same');
    const run = file.trials![0];
    expect(saysAlwaysTheSame(run)).toBe(true);
    const result = runResult(run);
    right += result.kind === 'heard' ? result.right : NaN;
    runs++;
  }
  close(right / (16 * runs), 0.5, { abs: 0.035, because: 'four standard deviations of 3200 coins' });
  expect(saysAlwaysTheSame(answered('same', 0.5, 1))).toBe(false);
});

test('a ranking counts who was chosen before whom', () => {
  let file = begun('better', [0, 1, 3], 12);
  // The one with the higher place is liked better, always.
  while (runUnderWay(file)) {
    const [a, b] = behindNow(runUnderWay(file)!);
    file = withAnswer(file, a > b ? 'A' : 'B');
  }
  expect(runResult(file.trials![0])).toEqual({
    kind: 'ranked',
    trials: 12,
    ranking: { won: [0, 4, 8], compared: [8, 8, 8], worth: null }
  });
});

test('stopping early is recorded, and nothing is added afterwards', () => {
  const stopped = withRunEnded(withAnswer(begun(), 'same'), 'early');
  expect(stopped.trials).toMatchObject([{ ended: 'early', answers: [{ said: 'same' }] }]);
  expect(withAnswer(stopped, 'same')).toBe(stopped);
  expect(runResult(withRunEnded(begun(), 'early').trials![0])).toEqual({ kind: 'none', trials: 0 });
});

test('an answer that belongs to another question changes nothing', () => {
  expect(withAnswer(begun('like'), 'same').trials![0].answers).toEqual([]);
});

test('whatever changes what is compared is noticed, and nothing else', () => {
  const file = begun();
  const run = runUnderWay(file)!;
  expect(isSameBench(file, run)).toBe(true);
  const [free, plate, cab, box] = file.setups;
  const changes = [
    { ...file, setups: [free, { ...plate, mount: { ...plate.mount, length: 0.15 } }, cab, box] },
    { ...file, setups: [plate, free, cab, box] },
    { ...file, setups: [free, plate, cab] },
    { ...file, air: { temperatureC: 21 } },
    { ...file, listener: { ...file.listener, angleDeg: 5 } },
    { ...file, sound: { ...file.sound, notch: 3 } },
    { ...file, view: { ...file.view, model: 'rule' } },
    { ...file, speakers: { oval: { ...file.speakers.oval, depth: 0.009 } } }
  ] as (typeof file)[];
  for (const changed of changes) expect(isSameBench(changed, run)).toBe(false);
  const alike = [
    { ...file, setups: [free, { ...plate, name: 'X', notes: 'y' }, cab, box] },
    { ...file, setups: [free, plate, { ...cab, turn: 90 }, box] },
    { ...file, view: { ...file.view, heard: 2, inches: true } }
  ] as (typeof file)[];
  for (const other of alike) expect(isSameBench(other, run)).toBe(true);
});
