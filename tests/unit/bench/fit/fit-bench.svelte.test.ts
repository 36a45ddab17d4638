import { describe, expect, it, test } from 'vitest';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { FitBench, type FitEar } from '../../../../src/lib/bench/fit/fit-bench.svelte.js';
import { WaveAnswers } from '../../../../src/lib/evaluation/wave-answers.svelte.js';
import type { BenchModel } from '../../../../src/lib/file/bench-file.js';
import { layoutBench } from '../../../../src/lib/file/layout-bench.js';
import { firstToTry } from '../../../../src/lib/evaluation/fit/sizes-to-try.js';
import { fit } from '../../../../src/lib/fitting/fit.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { powerSpectrum } from '../../../../src/lib/listening/power-spectrum.js';
import { usualSound } from '../../../../src/lib/sounds/roster.js';
import { hearWaves } from '../../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../../src/lib/waves/wave-solution.js';
import type { AskWavesOptions, WavePool } from '../../../../src/lib/workers/waves/wave-pool.js';
import type { WaveQuestion } from '../../../../src/lib/workers/waves/wave-protocol.js';
import { noise } from '../../../helpers/noise.js';
import { close } from '../../../helpers/close.js';

/** In which the two phone types alone fit, in the roof and in a box. */
const SMALL: BenchModel = {
  name: 'a tiny railcar',
  length: 0.019,
  width: 0.016,
  height: 0.008,
  above: 0.01,
  obstacles: [],
  roof: [0, 0.019],
  openings: 0,
  sounds: [usualSound('pinkNoise')]
};
const FITTED = fit(SMALL, SPEAKERS);
/** Every size of every box: more than are tried at first. */
const CANDIDATES = FITTED.candidates;

/** Workers that solve in the next turn; `dies` says which mounts kill one, twice. */
function solvingPool(dies: (question: WaveQuestion) => boolean = () => false) {
  const asked: WaveQuestion[] = [];
  const pool = {
    ask: async (question: WaveQuestion, { signal }: AskWavesOptions = {}) => {
      asked.push(question);
      await new Promise((resolve) => setTimeout(resolve));
      signal?.throwIfAborted();
      if (dies(question))
        throw new Error(
          'The part of the program that computes waves has failed, twice on the same question.'
        );
      const { installation, air } = question;
      // a finalist is not worth a second of the test
      const solved = solveMount(installation, air, { accuracy: 'draft' });
      return question.kind === 'hear'
        ? question.listeners.map((listener) => hearWaves(solved, listener))
        : [];
    }
  };
  return { pool: pool as unknown as WavePool, asked };
}

function ear() {
  const heard: { filter: Float32Array | null; sound: unknown } = { filter: null, sound: null };
  const samples = noise(48000, 3);
  const figures = powerSpectrum(Float32Array.from(samples), 48000);
  const strained = { peak: 0.9, meanSquare: 0.05, loudestSecond: 0.06 };
  const parts: FitEar & { playing: boolean } = {
    playing: false,
    play: async () => void (parts.playing = true),
    stop: () => void (parts.playing = false),
    try: (sound) => void (heard.sound = sound),
    tryMount: (filter) => void (heard.filter = filter),
    peakBehind: async (_, filter) => ({ peak: Math.max(...filter.map(Math.abs)), gain: 0.5 }),
    soundToTry: async () => ({
      figures,
      strain: async (responses) => ({ own: strained, through: responses.map(() => strained) })
    })
  };
  return { parts, heard };
}

function atHand(model: BenchModel = SMALL, dies?: (question: WaveQuestion) => boolean) {
  const { pool, asked } = solvingPool(dies);
  const waves = new WaveAnswers(pool);
  const bench = new Bench({ ...layoutBench(), model }, null);
  const { parts, heard } = ear();
  return { bench, asked, ear: parts, heard, fit: new FitBench(bench, waves, parts) };
}

const names = ({ fit }: ReturnType<typeof atHand>) => fit.ranking.map(({ line }) => line.key).sort();

describe('trying them all', () => {
  it('tries what is far apart, then the sizes next to what leads, the first three in full, and says what does not fit', async () => {
    const one = atHand();
    await one.fit.start();
    const known = new Set(names(one));
    for (const { key } of firstToTry(FITTED)) expect(known.has(key)).toBe(true);
    const tried = one.asked.filter(({ accuracy }) => accuracy === 'draft').length;
    expect(tried).toBe(known.size);
    expect(one.asked.slice(tried).map(({ accuracy }) => accuracy)).toEqual(['full', 'full', 'full']);
    expect(one.fit.run).toMatchObject({ sizes: CANDIDATES.length, done: tried, total: tried });
    expect(one.fit.run!.untried).toBe(CANDIDATES.length - tried);
    expect(one.fit.run!.untried).toBeGreaterThan(0);
    expect(one.fit.ranking.filter(({ line }) => line.accuracy === 'full')).toHaveLength(3);
    expect(one.fit.ranking.every(({ line }) => line.loudest !== null)).toBe(true);
    expect(one.fit.run!.misfits.length).toBeGreaterThan(30);
    expect(one.fit.run!.running).toBe(false);
  });

  it('solves nothing anew the second time, and after one change only what it concerns', async () => {
    const one = atHand();
    await one.fit.start();
    const first = one.asked.length;
    await one.fit.start();
    expect(one.asked).toHaveLength(first);
    // a motor changes no solution
    const { motor, ...rest } = SPEAKERS['phone-11x15'];
    one.bench.revise((file) => ({
      ...file,
      speakers: { ...file.speakers, 'phone-11x15': { ...rest, motor: { ...motor, bl: 1 } } }
    }));
    expect(one.fit.stale).toBe(true);
    one.fit.by = 'space';
    await one.fit.start();
    expect(one.asked.slice(first).filter(({ accuracy }) => accuracy === 'draft')).toEqual([]);
    // boxes under the roof over the floor: what is in the way takes places from the roof, not from what lies elsewhere
    const before = new Set(one.fit.run!.lines.map(({ key }) => key));
    const drafts = one.asked.filter(({ accuracy }) => accuracy === 'draft').length;
    one.fit.setModel({ roof: [0, 0.018] });
    await one.fit.start();
    const anew = one.fit.run!.lines.filter(({ key }) => !before.has(key));
    expect(one.asked.filter(({ accuracy }) => accuracy === 'draft').length - drafts).toBe(anew.length);
    expect(anew.length).toBeLessThan(one.fit.run!.lines.length);
  });

  it('tries the sizes next to what leads by another measure, and every size, where that is asked for; nothing twice', async () => {
    const one = atHand();
    one.fit.by = 'space';
    await one.fit.start();
    // the least box takes least: that is known without the sizes between
    expect(names(one).sort()).toEqual(
      firstToTry(FITTED)
        .map(({ key }) => key)
        .sort()
    );
    expect(one.fit.between).toEqual({ front: false, all: CANDIDATES.length - firstToTry(FITTED).length });
    one.fit.by = 'deep';
    expect(one.fit.between!.front).toBe(true);
    const before = one.asked.length;
    await one.fit.goOn(false);
    expect(one.fit.between!.front).toBe(false);
    expect(one.asked.length).toBeGreaterThan(before);
    await one.fit.goOn(true);
    expect(names(one)).toEqual(CANDIDATES.map(({ key }) => key).sort());
    expect(one.fit.between).toEqual({ front: false, all: 0 });
    const drafts = one.asked.filter(({ accuracy }) => accuracy === 'draft');
    expect(drafts).toHaveLength(CANDIDATES.length);
    // stopped meanwhile it goes on from there
    const run = one.fit.goOn(true);
    one.fit.stop();
    await run;
    expect(one.fit.run).toMatchObject({ stopped: true, running: false });
    await one.fit.goOn(true);
    expect(one.fit.run).toMatchObject({ stopped: false, running: false, problem: null });
  });

  it('stopped midway keeps what is known', async () => {
    const one = atHand();
    const run = one.fit.start();
    while ((one.fit.run?.done ?? 0) < 1) await new Promise((resolve) => setTimeout(resolve));
    one.fit.stop();
    await run;
    const known = one.fit.ranking.length;
    expect(known).toBeGreaterThan(0);
    expect(known).toBeLessThan(CANDIDATES.length);
    expect(one.fit.run).toMatchObject({ running: false, stopped: true, problem: null });
    const asked = one.asked.length;
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(one.asked).toHaveLength(asked);
  });

  it('goes on where a worker dies, and says of which mount nothing is known', async () => {
    const one = atHand(SMALL, ({ installation }) => installation.mount.kind === 'box');
    await one.fit.start();
    expect(one.fit.ranking.length).toBeGreaterThan(0);
    expect(one.fit.run!.refused.length + one.fit.ranking.length).toBe(one.fit.run!.total);
    expect(one.fit.run!.refused[0].why).toMatch(/^The part of the program that computes waves has failed/);
  });

  it('with an empty drawer, and in a model into which nothing fits, ends at once with nothing', async () => {
    const one = atHand();
    for (const key of Object.keys(one.fit.drawer)) one.fit.leaveOut(key, true);
    await one.fit.start();
    expect(one.fit.run).toMatchObject({ lines: [], misfits: [], problem: null });
    const none = atHand({ ...SMALL, length: 0.006, roof: [0, 0.006] });
    await none.fit.start();
    expect(none.fit.run).toMatchObject({ lines: [], problem: null, total: 0 });
    expect(none.fit.run!.misfits).toHaveLength(45);
    expect(none.asked).toEqual([]);
  });

  it('of an impossible model says why, tries nothing and loses nothing', async () => {
    const one = atHand();
    await one.fit.start();
    const known = one.fit.ranking.length;
    const motor = {
      name: 'motor',
      from: 0.01,
      length: 0.02,
      aside: 0,
      width: 0.005,
      above: 0,
      height: 0.004
    };
    one.fit.setModel({ obstacles: [motor] });
    expect(one.fit.impossible).toBe('“motor” reaches 11 mm out of the body beyond the right end');
    await one.fit.start();
    expect(one.fit.ranking).toHaveLength(known);
    expect(one.bench.file.model!.obstacles).toEqual([motor]);
    one.bench.undo();
    expect(one.fit.impossible).toBeNull();
  });
});

describe('a line', () => {
  it('is put on the shelf with its speaker, in one step that is undone', async () => {
    const one = atHand();
    await one.fit.start();
    const before = one.bench.file;
    const [{ line }] = one.fit.ranking;
    expect(one.fit.isOnShelf(line)).toBe(false);
    expect(one.fit.putOnShelf(line)).toBeNull();
    expect(one.fit.isOnShelf(line)).toBe(true);
    const { setups, speakers, view } = one.bench.file;
    expect(setups.at(-1)).toMatchObject({
      name: line.candidate.name,
      speaker: line.candidate.speaker,
      mount: line.candidate.mount
    });
    expect(speakers[line.candidate.speaker]).toEqual(line.speaker);
    expect(view.heard).toBe(setups.length - 1);
    expect(one.bench.heard.problem).toBeNull();
    expect(one.bench.heard.installation).toEqual(line.question.installation);
    one.bench.undo();
    expect(one.bench.file).toEqual(before);
    // a name beyond what the file takes is cut, and the shelf knows it all the same
    const long = { ...line, candidate: { ...line.candidate, name: line.candidate.name.padEnd(90, '.') } };
    expect(one.fit.putOnShelf(long)).toBeNull();
    expect(one.bench.heard.setup.name).toHaveLength(80);
    expect(one.fit.isOnShelf(long)).toBe(true);
  });

  it('is heard on the model’s sound as loud as it is, beside the others, or as loud as the softest', async () => {
    const one = atHand();
    await one.fit.start();
    const [first, last] = [one.fit.ranking[0].line, one.fit.ranking.at(-1)!.line];
    const powerOf = async (line: typeof first) => {
      await one.fit.hear(line);
      return 10 * Math.log10(one.heard.filter!.reduce((sum, x) => sum + x * x, 0));
    };
    const trueDb = [await powerOf(first), await powerOf(last), await powerOf(first)];
    expect(one.heard.sound).toBe(SMALL.sounds[0]);
    expect(one.ear.playing).toBe(true);
    // what was made room for stays: it never gets louder while one compares
    close(trueDb[2], trueDb[0], { abs: 1e-6, because: 'the same line' });
    expect(trueDb[0]).toBeGreaterThan(trueDb[1]);
    one.fit.equal = true;
    const difference = first.measures.levelDb - last.measures.levelDb;
    close(trueDb[0] - (await powerOf(first)), difference, {
      abs: 1e-6,
      because: 'brought down to the softest'
    });
    close(await powerOf(last), trueDb[1], { abs: 1e-6, because: 'the softest stays' });
    one.fit.silence();
    expect(one.heard).toEqual({ filter: null, sound: null });
    expect(one.ear.playing).toBe(false);
  });

  it('says how much small changes matter, each alone, and a gap in a box most of all in depth', async () => {
    const one = atHand();
    one.fit.by = 'deep';
    await one.fit.start();
    const { line } = one.fit.ranking.find((each) => each.line.candidate.mount.kind === 'box')!;
    await one.fit.ask(line);
    const { now, found, done } = one.fit.matters!;
    expect(done).toBe(true);
    expect(found.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['length', 'width', 'depth', 'gap', 'resonance up'])
    );
    const by = Object.fromEntries(
      found.map(({ name, measures }) => [
        name,
        Math.abs(Math.log2(measures.reachesDown! / now!.measures.reachesDown!))
      ])
    );
    for (const { name } of found) if (name !== 'gap') expect(by['gap']).toBeGreaterThan(by[name]);
    await one.fit.ask(line);
    expect(one.fit.matters).toBeNull();
  });
});

test('what was tried is stale once the model is another, and not any more when that is undone', async () => {
  const one = atHand();
  await one.fit.start();
  expect(one.fit.stale).toBe(false);
  expect(one.fit.measuredOn).toEqual([one.fit.model.sounds[0].name]);
  // Nothing that was measured changes with what is put on the shelf, though its speaker comes along.
  const known = Object.keys(one.bench.file.speakers);
  const { line } = one.fit.ranking.find(({ line }) => !known.includes(line.candidate.speaker))!;
  expect(one.fit.putOnShelf(line)).toBeNull();
  expect(Object.keys(one.bench.file.speakers)).toContain(line.candidate.speaker);
  expect(one.fit.stale).toBe(false);
  one.fit.setModel({ width: 0.02 });
  expect(one.fit.stale).toBe(true);
  expect(one.fit.between).toBeNull();
  one.bench.undo();
  expect(one.fit.stale).toBe(false);
  // it is in what was measured
  one.bench.revise((file) => ({ ...file, lift: { gainDb: 6, below: 300 } }));
  expect(one.fit.stale).toBe(true);
});
