import { afterEach, expect, test, vi } from 'vitest';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { usualSound } from '../../../../src/lib/sounds/roster.js';
import type { BenchFile, ModelName } from '../../../../src/lib/file/bench-file.js';
import type { MovingSound } from '../../../../src/lib/sounds/kinds.js';
import { SoundUnavailable } from '../../../../src/lib/audio/sound-unavailable.js';
import type { Known, Question } from '../../../../src/lib/evaluation/wave-jobs.js';
import { type HeardWaves, hearWaves } from '../../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../../src/lib/waves/wave-solution.js';
import { computedByRule } from '../../../helpers/by-rule.js';
import { fakeRoom, RATE, settled, soundingAtHand } from './sounding-at-hand.svelte.js';

let end = (): void => undefined;
afterEach(() => end());

function atHand(options: Parameters<typeof soundingAtHand>[0] = {}) {
  const hand = soundingAtHand(options);
  ({ end } = hand);
  return hand;
}

/** A draft of each mount, solved once. */
const drafts = new Map<string, HeardWaves>();
function drafted({ installation, air, listener }: Question): Known {
  const key = JSON.stringify(installation);
  const heard = drafts.get(key) ?? hearWaves(solveMount(installation, air, { accuracy: 'draft' }), listener);
  drafts.set(key, heard);
  return { accuracy: 'draft', heard };
}
const KNOWN = { best: drafted, refusal: () => null, draft: () => Promise.reject(new Error('not solved')) };

const notch = (to: number): MovingSound => ({ ...(usualSound('diesel') as MovingSound), notch: to });
/** Longer than a change has to stay that follows another one fast. */
const rested = async (): Promise<void> => {
  await settled();
  await new Promise((resolve) => setTimeout(resolve, 200));
  await settled();
};

test('the first sound: branches, horn, loop, gain, volume and what is heard, and only then it plays', async () => {
  const { sounding, deeds, bench } = atHand();
  await settled();
  expect(deeds).toEqual([]);
  await sounding.play();
  expect(sounding.playing).toBe(true);
  expect(deeds).toEqual([
    ...bench.stands.map(({ index }) => `branch ${index} true`),
    'horn 20',
    'sound 16 0',
    `gain ${0.85 / 2} 0`,
    'hear 0',
    'volume 0.25',
    'play'
  ]);
});

test('a second press while it is prepared starts nothing more, and stopping lets go of the cord', async () => {
  const { sounding, deeds } = atHand();
  const [first, second] = [sounding.play(), sounding.play()];
  expect(sounding.preparing).toBe(true);
  await Promise.all([first, second]);
  expect(deeds.filter((deed) => deed === 'play').length).toBe(1);
  sounding.blow(true);
  expect(sounding.blowing).toBe(true);
  sounding.stop();
  expect(deeds.slice(-2)).toEqual(['blow false', 'stop']);
  expect([sounding.playing, sounding.blowing]).toEqual([false, false]);
  sounding.blow(true);
  expect(sounding.blowing, 'nothing is blown while nothing plays').toBe(false);
});

test('another sound, chosen while the first is being prepared, is faded to once it plays', async () => {
  const { sounding, bench, hold, letGo, since } = atHand();
  await settled();
  hold('blast');
  hold('peaksThrough');
  const playing = sounding.play();
  await settled();
  bench.setSound(usualSound('pinkNoise'));
  await rested();
  await letGo('blast');
  await letGo('peaksThrough');
  await playing;
  await settled();
  expect(sounding.loop?.sound.kind).toBe('pinkNoise');
  expect(since('play')).toContain('sound 16 undefined');
});

test('another mount, heard while the first sound is being prepared, is the one that is heard', async () => {
  const { sounding, bench, hold, letGo, deeds } = atHand();
  await settled();
  hold('ride');
  hold('sound');
  bench.setSound(usualSound('pinkNoise'));
  const playing = sounding.play();
  await settled();
  bench.hear(1);
  await letGo('sound');
  await playing;
  expect(deeds.filter((deed) => deed.startsWith('hear')).at(-1)).toBe('hear 1');
});

test('a louder sound has its gain made first, a softer one waits for the search', async () => {
  const { sounding, bench, peaks, since } = atHand();
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

test('a moved lever rides to its loop; a lever on its way renders nothing at what it passes', async () => {
  const { sounding, bench, asked, since } = atHand({ file: { ...demoBench(), sound: notch(1) } });
  await sounding.play();
  await rested();
  bench.setSound(notch(4));
  await rested();
  expect(asked.filter(({ kind }) => kind === 'ride').length).toBe(1);
  expect(since('play').filter((deed) => deed.startsWith('sound'))).toEqual(['sound 24 0']);
  expect(sounding.loop?.sound).toMatchObject({ notch: 4 });
  // At one moment, however long a busy machine takes for it.
  const clock = vi.spyOn(performance, 'now').mockReturnValue(performance.now());
  for (const to of [5, 6, 7, 8]) {
    bench.setSound(notch(to));
    await settled();
  }
  clock.mockRestore();
  await rested();
  const notches = asked
    .filter(({ kind }) => kind === 'ride')
    .map((q) => (q as { sound: MovingSound }).sound.notch);
  expect(notches.at(-1)).toBe(8);
  expect(notches).not.toContain(6);
  expect(notches).not.toContain(7);
});

test('of two sounds that are chosen the newest plays, however late the other comes', async () => {
  const { sounding, bench, hold, letGo, since } = atHand();
  await sounding.play();
  await rested();
  hold('sound');
  bench.setSound(usualSound('pinkNoise'));
  await rested();
  bench.setSound(usualSound('whiteNoise'));
  await rested();
  await letGo('sound');
  await rested();
  expect(sounding.loop?.sound.kind).toBe('whiteNoise');
  expect(since('play').filter((deed) => deed.startsWith('sound')).length).toBe(1);
});

test('a recording whose file is not open says so, stops what plays and forgets its levels', async () => {
  const { sounding, bench, deeds } = atHand();
  await sounding.play();
  await settled();
  expect(sounding.difference(bench.stands[1])).not.toBeNull();
  bench.setSound({ kind: 'recording', name: 'gone.wav' });
  await rested();
  expect([sounding.playing, sounding.loop]).toEqual([false, null]);
  expect(deeds.at(-1)).toBe('stop');
  expect(sounding.levelPending).toBe('not measured: its recording is not open');
  expect(sounding.difference(bench.stands[1])).toBeNull();
  await sounding.play();
  expect(sounding.problem).toBe('Choose a sound first: your recording is not open any more.');
});

test('a recording that is opened becomes the sound of the bench', async () => {
  const { sounding, bench } = atHand();
  await sounding.openRecording(new File([], 'mine.wav'));
  expect(bench.file.sound).toEqual({ kind: 'recording', name: 'mine.wav' });
  expect(sounding.recording).toMatchObject({ name: 'mine.wav', start: 0, end: 4 });
  await rested();
  expect(sounding.loop?.key).toBe('recording 1 0 4');
});

test('refused audio is one sentence, and the next press tries again', async () => {
  let tries = 0;
  const { room, deeds } = fakeRoom();
  const { sounding } = atHand({
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
  const { sounding, bench, hold, letGo, refused } = atHand();
  expect(sounding.measuring).toBe(true);
  await rested();
  expect(sounding.measuring).toBe(false);
  hold('heardThrough');
  for (const change of [() => bench.setSound(usualSound('puff')), () => bench.setTemperature(3)]) {
    change();
    expect(sounding.measuring).toBe(true);
    await rested();
    expect([sounding.measuring, sounding.difference(bench.stands[1])]).toEqual([true, -6]);
    await letGo('heardThrough');
    await rested();
    expect(sounding.measuring).toBe(false);
    hold('heardThrough');
  }
  await letGo('heardThrough');
  // A sound that is there already is the bench's again.
  bench.undo();
  bench.undo();
  bench.setSound({ ...usualSound('puff') });
  await rested();
  expect(sounding.measuring).toBe(false);
  // What cannot be measured is not waited for.
  refused.heardThrough = 'The worker has gone.';
  bench.setTemperature(30);
  await rested();
  expect([sounding.measuring, sounding.problem]).toEqual([false, 'The worker has gone.']);
});

test('no sound is made of a bench that gives way to the kept one', async () => {
  let ready = $state(false);
  const { bench, asked } = atHand({ ready: () => ready });
  await settled();
  expect(asked).toEqual([]);
  bench.setSound(usualSound('puff'));
  ready = true;
  await settled();
  expect(asked.flatMap((one) => (one.kind === 'sound' ? [one.sound.kind] : []))).toEqual(['puff']);
});

test('what plays the sound is fetched when the first sound is prepared, not before; that it failed says nothing by itself', async () => {
  const asked: string[] = [];
  const { sounding, bench } = atHand({
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
  const { sounding, room } = atHand();
  await sounding.play();
  room.onStateChange!('suspended');
  expect(sounding.problem).toBe('The browser has stopped the sound. Press play to go on.');
  expect(sounding.playing).toBe(false);
  sounding.problem = null;
  room.onStateChange!('closed');
  expect(sounding.problem).toBeNull();
});

test('a worker that died is told of; a sound that cannot be made is one sentence and no level', async () => {
  const { sounding, worker, refused } = atHand();
  refused.sound = 'knob out of range';
  await rested();
  expect(sounding.problem).toMatch(/knob out of range/);
  expect(sounding.levelPending).toBe('not measured');
  worker.onDied!('The part of the program that computes sounds has failed.');
  expect(sounding.problem).toBe('The part of the program that computes sounds has failed.');
});

test('at the same loudness every branch is brought down to the quietest', async () => {
  const { sounding, bench, since } = atHand();
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
  const { sounding, bench } = atHand({
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
  const { hold, letGo, since, sounding, bench, peaks } = atHand({ file: twoMounts('rule'), waves: KNOWN });
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
  const { sounding, bench, peaks, since } = atHand();
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
  const { sounding, deeds } = atHand();
  await sounding.earCheck();
  sounding.silence(true);
  sounding.volume = 1;
  await settled();
  expect(deeds.slice(0, 3)).toEqual(['ear check', 'silence true', 'volume 1']);
  expect(sounding.silenced).toBe(true);
});

test('a sound is tried in the place of the bench’s, which stays as it is, and comes back after it', async () => {
  const { sounding, bench, asked, since, peaks } = atHand();
  await sounding.play();
  await rested();
  const [file, { loop }] = [bench.file, sounding];
  const bell = usualSound('bell');
  peaks.now = 4;
  sounding.try(bell);
  await rested();
  expect(asked.filter((question) => question.kind === 'sound').map(({ sound }) => sound)).toContain(bell);
  expect(since('play').some((deed) => deed.startsWith('sound'))).toBe(true);
  // Nothing of the bench, of its history or of what is drawn and measured.
  expect([bench.file === file, bench.canUndo, sounding.loop === loop]).toEqual([true, false, true]);
  const softer = since('play').findLast((deed) => deed.startsWith('gain'));
  expect(softer, 'room is made').toBeDefined();
  const tried = since('play');
  expect(tried.indexOf(softer!), 'first').toBeLessThan(tried.findIndex((deed) => deed.startsWith('sound')));
  peaks.now = 1;
  sounding.try(null);
  await rested();
  const deeds = since('play');
  expect(deeds.filter((deed) => deed.startsWith('sound'))).toHaveLength(2);
  expect(deeds.at(-1), 'as loud as before').toMatch(/^gain/);
  expect(deeds.at(-1)).not.toBe(softer);
});

test('what is tried while nothing plays is heard once it does; what is chosen ends it', async () => {
  const { sounding, bench, since } = atHand();
  await settled();
  sounding.try(usualSound('bell'));
  await rested();
  expect(sounding.playing).toBe(false);
  await sounding.play();
  await rested();
  expect(since('play').filter((deed) => deed.startsWith('sound'))).toHaveLength(1);
  sounding.try(null);
  bench.setSound(usualSound('pinkNoise'));
  await rested();
  expect(sounding.loop?.sound.kind).toBe('pinkNoise');
});

test('who listens blind hears across a pause what he is given, and afterwards the heard mount again', async () => {
  const { sounding, bench, since } = atHand();
  await sounding.play();
  await rested();
  expect(sounding.settled).toBe(true);
  sounding.listenBlind([1, 3]);
  await settled();
  sounding.hearBlindly(3);
  bench.hear(2);
  await settled();
  expect(since('play').filter((deed) => deed.startsWith('hear'))).toEqual(['hear across a pause 3']);
  // Stopped and begun again, it is still that one.
  sounding.stop();
  await sounding.play();
  await rested();
  expect(since('volume 0.25').filter((deed) => deed.startsWith('hear'))).toEqual([]);
  sounding.listenBlind(null);
  await settled();
  expect(since('play').filter((deed) => deed.startsWith('hear'))).toEqual(['hear 2']);
});
