import { expect, test } from 'vitest';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { usualSound } from '../../../../src/lib/sounds/roster.js';
import type { BenchFile, ModelName } from '../../../../src/lib/file/bench-file.js';
import { SoundUnavailable } from '../../../../src/lib/audio/sound-unavailable.js';
import type { Known, Question } from '../../../../src/lib/evaluation/wave-jobs.js';
import { type HeardWaves, hearWaves } from '../../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../../src/lib/waves/wave-solution.js';
import { computedByRule } from '../../../helpers/by-rule.js';
import { soundingAtHand, fakeRoom, RATE, rested, settled } from './sounding-at-hand.svelte.js';

/** A draft of each mount, solved once. */
const drafts = new Map<string, HeardWaves>();
function drafted({ installation, air, listener }: Question): Known {
  const key = JSON.stringify(installation);
  const heard = drafts.get(key) ?? hearWaves(solveMount(installation, air, { accuracy: 'draft' }), listener);
  drafts.set(key, heard);
  return { accuracy: 'draft', heard };
}
const KNOWN = { best: drafted, refusal: () => null, draft: () => Promise.reject(new Error('not solved')) };

test('the first sound: branches, loop, gain, volume and what is heard, then it plays; the horn comes with it', async () => {
  const { sounding, deeds, bench, since } = soundingAtHand();
  await settled();
  expect(deeds).toEqual([]);
  await sounding.play();
  expect(sounding.playing).toBe(true);
  expect(deeds).toEqual([
    'gain 0.5 undefined',
    ...bench.stands.map(({ index }) => `branch ${index} true`),
    'sound 16 0',
    'gain 0.5 0',
    'hear 0',
    'volume 0.25',
    'play'
  ]);
  expect(sounding.horn.canBlow).toBe(false);
  await settled();
  expect(since('play')).toEqual([`gain ${0.85 / 2} undefined`, 'horn 20']);
  expect(sounding.horn.canBlow).toBe(true);
});

test('the first sound waits for its own loop alone: not for figures, another notch, the horn, or the levels', async () => {
  const { sounding, asked, hold, letGo, deeds, bench } = soundingAtHand();
  for (const kind of ['loudnessThrough', 'figures', 'blast', 'peaksThrough']) hold(kind);
  await sounding.play();
  expect(sounding.playing).toBe(true);
  const kinds = () => asked.map(({ kind }) => kind);
  expect(kinds().slice(0, 2)).toEqual(['sound', 'keep']);
  await settled();
  // Its levels first; until they are told nothing else is asked for.
  expect(kinds()).toEqual(['sound', 'keep', 'loudnessThrough']);
  expect([sounding.begun, sounding.measuredLoop.current, sounding.horn.canBlow]).toEqual([
    false,
    null,
    false
  ]);
  sounding.blow(true);
  expect(sounding.blowing, 'no horn is there').toBe(false);

  await letGo('loudnessThrough');
  expect(sounding.begun).toBe(true);
  expect(sounding.difference(bench.stands[1])).toBe(-6);
  expect(sounding.measuredLoop.current).toBeNull();
  expect(kinds()).toContain('figures');
  await letGo('figures');
  expect(sounding.measuredLoop.current!.key).toBe(sounding.loop!.key);
  const made = () => deeds.filter((deed) => /^(gain|horn)/.test(deed));
  expect(new Set(made())).toEqual(new Set(['gain 0.5 0', 'gain 0.5 undefined']));
  const before = made().length;
  // A horn that is there is not blown before there is room for it.
  await letGo('blast');
  expect(sounding.horn.canBlow).toBe(false);
  await letGo('peaksThrough');
  expect(made().slice(before)).toEqual([`gain ${0.85 / 2} undefined`, 'horn 20']);
  expect(sounding.horn.canBlow).toBe(true);
});

test('what waits for the first sound waits for a press on play as well', async () => {
  const { room } = fakeRoom();
  let open = (): void => undefined;
  const opened = new Promise<typeof room>((resolve) => (open = () => resolve(room)));
  const { sounding } = soundingAtHand({ openRoom: () => opened });
  expect(sounding.atLeisure).toBe(false);
  const played = sounding.play();
  await settled();
  expect([sounding.begun, sounding.preparing, sounding.atLeisure]).toEqual([true, true, false]);
  open();
  await played;
  expect([sounding.playing, sounding.atLeisure]).toEqual([true, true]);
});

test('a sound that may not have room for the usual gain is measured before it plays, by itself', async () => {
  const { sounding, asked, worker, deeds, peaks, hold } = soundingAtHand();
  hold('loudnessThrough');
  const { ask } = worker;
  worker.ask = (async (question: Parameters<typeof ask>[0]) =>
    question.kind === 'sound' ? new Float32Array(16).fill(0.9) : ask(question as never)) as typeof ask;
  peaks.now = 3;
  await sounding.play();
  expect(asked.map(({ kind }) => kind)).toContain('peaksThrough');
  expect(asked.map(({ kind }) => kind)).not.toContain('blast');
  const gains = deeds.filter((deed) => deed.startsWith('gain'));
  expect(new Set(gains)).toEqual(new Set([`gain ${0.85 / 3} 0`, `gain ${0.85 / 3} undefined`]));
});

test('a second press while it is prepared starts nothing more, and stopping lets go of the cord', async () => {
  const { sounding, deeds } = soundingAtHand();
  const [first, second] = [sounding.play(), sounding.play()];
  expect(sounding.preparing).toBe(true);
  await Promise.all([first, second]);
  expect(deeds.filter((deed) => deed === 'play').length).toBe(1);
  await settled();
  sounding.blow(true);
  expect(sounding.blowing).toBe(true);
  sounding.stop();
  expect(deeds.slice(-2)).toEqual(['blow false', 'stop']);
  expect([sounding.playing, sounding.blowing]).toEqual([false, false]);
  sounding.blow(true);
  expect(sounding.blowing, 'nothing is blown while nothing plays').toBe(false);
});

test('a louder sound has its gain made first, a softer one waits for the search', async () => {
  const { sounding, bench, peaks, since } = soundingAtHand();
  await sounding.play();
  await settled();
  peaks.now = 10;
  bench.setSound(usualSound('pinkNoise'));
  await rested();
  const louder = since('play');
  const gain = louder.findIndex((deed) => deed.startsWith(`gain ${0.85 / 11}`));
  expect(gain).toBeGreaterThanOrEqual(0);
  expect(gain).toBeLessThan(louder.findIndex((deed) => deed.startsWith('sound')));
  peaks.now = 0.1;
  bench.setSound(usualSound('whiteNoise'));
  await rested();
  const after = since('play').slice(louder.length);
  expect(after.findIndex((deed) => deed.startsWith('sound'))).toBeLessThan(
    after.findIndex((deed) => deed.startsWith('gain'))
  );
});

test('refused audio is one sentence, and the next press tries again', async () => {
  let tries = 0;
  const { room, deeds } = fakeRoom();
  const { sounding } = soundingAtHand({
    openRoom: async () => {
      if (tries++ === 0) throw new SoundUnavailable('This browser gives no sound.');
      return room;
    }
  });
  await sounding.play();
  expect([sounding.problem, sounding.playing, sounding.preparing]).toEqual([
    'This browser gives no sound.',
    false,
    false
  ]);
  await sounding.play();
  expect([sounding.problem, sounding.playing]).toEqual([null, true]);
  expect(deeds.at(-1)).toBe('play');
});

test('levels that are not those of the sound and the mounts there are say so', async () => {
  const { sounding, bench, hold, letGo, refused } = soundingAtHand();
  expect(sounding.measuring).toBe(true);
  await rested();
  expect(sounding.measuring).toBe(false);
  hold('loudnessThrough');
  for (const change of [() => bench.setSound(usualSound('puff')), () => bench.setTemperature(3)]) {
    change();
    expect(sounding.measuring).toBe(true);
    await rested();
    expect([sounding.measuring, sounding.difference(bench.stands[1])]).toEqual([true, -6]);
    await letGo('loudnessThrough');
    await rested();
    expect(sounding.measuring).toBe(false);
    hold('loudnessThrough');
  }
  await letGo('loudnessThrough');
  // A sound that is there already is the bench's again.
  bench.undo();
  bench.undo();
  bench.setSound({ ...usualSound('puff') });
  await rested();
  expect(sounding.measuring).toBe(false);
  // What cannot be measured is not waited for.
  refused.loudnessThrough = 'The worker has gone.';
  bench.setTemperature(30);
  await rested();
  expect([sounding.measuring, sounding.problem]).toEqual([false, 'The worker has gone.']);
});

test('no sound is made of a bench that gives way to the kept one', async () => {
  let ready = $state(false);
  const { bench, asked } = soundingAtHand({ ready: () => ready });
  await settled();
  expect(asked).toEqual([]);
  bench.setSound(usualSound('puff'));
  ready = true;
  await settled();
  expect(asked.flatMap((one) => (one.kind === 'sound' ? [one.sound.kind] : []))).toEqual(['puff']);
});

test('what plays the sound is fetched when the first sound is prepared, not before; that it failed says nothing by itself', async () => {
  const asked: string[] = [];
  const { sounding, bench } = soundingAtHand({
    fetchAudio: () => {
      asked.push(bench.file.sound.kind);
      return Promise.reject(new Error('no network'));
    }
  });
  expect(asked).toEqual([]);
  await rested();
  expect(asked.length).toBeGreaterThan(0);
  expect(sounding.problem).toBeNull();
});

test('a browser that stops the sound is told of, and only while it plays', async () => {
  const { sounding, room } = soundingAtHand();
  await sounding.play();
  room.onStateChange!('suspended');
  expect(sounding.problem).toBe('The browser has stopped the sound. Press play to go on.');
  expect(sounding.playing).toBe(false);
  sounding.problem = null;
  room.onStateChange!('closed');
  expect(sounding.problem).toBeNull();
});

test('a worker that died is told of; a sound that cannot be made is one sentence and no level', async () => {
  const { sounding, worker, refused } = soundingAtHand();
  refused.sound = 'knob out of range';
  await rested();
  expect(sounding.problem).toMatch(/knob out of range/);
  expect(sounding.levelPending).toBe('not measured');
  worker.onDied!('The part of the program that computes sounds has failed.');
  expect(sounding.problem).toBe('The part of the program that computes sounds has failed.');
});

test('at the same loudness every branch is brought down to the quietest', async () => {
  const { sounding, bench, since } = soundingAtHand();
  await sounding.play();
  await settled();
  const before = since('play').length;
  bench.setSameLoudness(true);
  await settled();
  // The last of the stands is the quietest here, 6 dB a stand: it alone stays as it is.
  expect(
    since('play')
      .slice(before)
      .filter((deed) => deed.startsWith('branch'))
  ).toEqual(bench.stands.slice(0, -1).map(({ index }) => `branch ${index} true`));
});

/** Two mounts of the demo bench, by one of the models. */
function twoMounts(model: ModelName): BenchFile {
  const demo = demoBench();
  return { ...demo, setups: demo.setups.slice(0, 2), view: { ...demo.view, model } };
}

test('the first sound waits for no wave: the rule of thumb is heard, until there is room for what is drawn', async () => {
  let answer = (): void => undefined;
  const asked = new Promise<void>((resolve) => (answer = resolve));
  const draft = async (question: Question): Promise<Known> => asked.then(() => drafted(question));
  const filters: Float32Array[] = [];
  const { room } = fakeRoom();
  const setBranch = (index: number, filter: Float32Array): void => void (filters[index] = filter);
  const { sounding, bench } = soundingAtHand({
    file: twoMounts('wave'),
    waves: { ...KNOWN, draft },
    openRoom: async () => ({ ...room, setBranch })
  });
  await settled();
  await sounding.play();
  expect(sounding.playing).toBe(true);
  expect(bench.heard.computed!.answer.model).toBe('wave');
  expect(sounding.standsIn).toBe(true);
  const byRule = bench.stands.map((stand) => computedByRule(stand.installation, RATE).impulseResponse);
  expect(filters).toEqual(byRule);
  // Another size is followed meanwhile, as far as the rule of thumb can.
  bench.hear(1);
  bench.pushKnob('width', 0.06);
  await settled();
  expect(filters[1]).toEqual(computedByRule(bench.heard.installation, RATE).impulseResponse);
  answer();
  await rested();
  expect(sounding.standsIn).toBe(false);
  expect(filters[1]).toEqual(bench.heard.computed!.impulseResponse);
}, 20_000);

test('nothing of the wave solution is played before there is room for it', async () => {
  const { hold, letGo, since, sounding, bench, peaks } = soundingAtHand({
    file: twoMounts('rule'),
    waves: KNOWN
  });
  await sounding.play();
  await settled();
  hold('peaksThrough');
  peaks.now = 4;
  bench.setModel('wave');
  await rested();
  expect(since('play').filter((deed) => deed.startsWith('branch'))).toEqual([]);
  await letGo('peaksThrough');
  await rested();
  const deeds = since('play');
  expect(deeds).toEqual(
    expect.arrayContaining(['branch 0 true', 'branch 1 true', `gain ${0.85 / 8} undefined`])
  );
});

test('while a size is dragged the gain stays where it is', async () => {
  const { sounding, bench, peaks, since } = soundingAtHand();
  await sounding.play();
  await settled();
  const before = since('play').length;
  peaks.now = 8;
  bench.hear(1);
  bench.dragging = true;
  bench.pushKnob(bench.knobs[0].key, bench.knobs[0].min);
  bench.setTemperature(5);
  await settled();
  expect(
    since('play')
      .slice(before)
      .filter((deed) => deed.startsWith('gain'))
  ).toEqual([]);
  bench.dragging = false;
  await settled();
  expect(
    since('play')
      .slice(before)
      .filter((deed) => deed.startsWith('gain')).length
  ).toBeGreaterThan(0);
});

test('silence, volume and the ear check reach the room', async () => {
  const { sounding, deeds } = soundingAtHand();
  await sounding.earCheck();
  sounding.silence(true);
  sounding.volume = 1;
  await settled();
  expect(deeds.slice(0, 3)).toEqual(['ear check', 'silence true', 'volume 1']);
  expect(sounding.silenced).toBe(true);
});
