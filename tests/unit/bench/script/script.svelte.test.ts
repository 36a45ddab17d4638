import { flushSync } from 'svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { Script } from '../../../../src/lib/bench/script/script.svelte.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import type { Scene } from '../../../../src/lib/file/scene.js';
import { usualSound } from '../../../../src/lib/sounds/roster.js';
import { sceneOf, words } from '../../../helpers/scenes.js';

const ends: (() => void)[] = [];
beforeEach(() => void vi.useFakeTimers({ now: 1_000_000 }));
afterEach(() => {
  ends.splice(0).forEach((end) => end());
  vi.useRealTimers();
});

const demo = demoBench();
const SCENES: Scene[] = [
  words('Why?\nIt goes round.', { minutes: 0.5 }),
  sceneOf(demo, 0, { shows: 'tone', frequency: 400 }),
  sceneOf(demo, 1, { shows: 'puff', minutes: 2, heard: { sound: usualSound('bell') } }),
  sceneOf(demo, 3, { minutes: 1.5 })
];

/** The demo bench by the rule of thumb with this script, what is around it noted. */
function scriptAtHand(scenes: Scene[] = SCENES) {
  const bench = new Bench({
    ...demo,
    view: { ...demo.view, model: 'rule' },
    ...(scenes.length > 0 && { script: scenes })
  });
  const expected: string[] = [];
  const hall = {
    open: false,
    air: false,
    enter: async () => void (hall.open = true),
    leave: async () => void (hall.open = false)
  };
  const air = {
    mode: 'tone' as 'tone' | 'puff',
    frequency: 1000,
    makePuff: () => void (air.mode = 'puff'),
    showTone: () => void (air.mode = 'tone')
  };
  const growth = { before: null as unknown, stop: vi.fn() };
  const sounding = {
    ownRecording: { opened: null },
    silence: vi.fn(),
    expect: (sound: { name: string }) => void expected.push(sound.name)
  };
  const script = new Script({ bench, hall, air, growth, sounding });
  ends.push($effect.root(() => script.connect()));
  flushSync();
  return { bench, script, hall, air, growth, sounding, expected };
}

test('keeps what is heard and seen, as it is now', () => {
  const { bench, script, hall, air } = scriptAtHand([]);
  bench.hear(1);
  expect(script.keep()).toBeNull();
  bench.turnKnob('width', 0.06);
  Object.assign(hall, { open: true, air: true });
  air.frequency = 250;
  script.keep();
  const [large, small] = script.scenes;
  expect(large).toEqual({
    ...sceneOf(bench.file, 1),
    heard: { ...sceneOf(bench.file, 1).heard, setup: demo.setups[1] }
  });
  expect(small).toMatchObject({
    shows: 'tone',
    frequency: 250,
    heard: { setup: { mount: { width: 0.06 } } }
  });
  // Each is one step back.
  bench.undo();
  expect(script.scenes).toHaveLength(1);
});

test('steps both ways through its scenes and stays at the ends', () => {
  const { bench, script, hall, air, expected } = scriptAtHand();
  const seen = (): unknown[] => [
    script.at,
    script.text !== null,
    hall.air && air.mode,
    bench.heard.setup.name,
    bench.file.sound.name
  ];
  script.begin();
  flushSync();
  expect([hall.open, script.running]).toEqual([true, true]);
  const way = [
    [0, true, false, 'Free air', demo.sound.name],
    [1, false, 'tone', 'Free air', demo.sound.name],
    [2, false, 'puff', 'Flat plate', usualSound('bell').name],
    [3, false, false, 'Closed box', demo.sound.name]
  ];
  for (const [i, scene] of way.entries()) {
    expect(seen(), `on, ${i}`).toEqual(scene);
    script.step(1);
  }
  for (const [i, scene] of way.toReversed().entries()) {
    expect(seen(), `back, ${i}`).toEqual(scene);
    script.step(-1);
  }
  expect(air.frequency).toBe(400);
  // The sound of the scene that comes is made ready before it is wanted.
  expect(expected.slice(0, 3)).toEqual([demo.sound.name, usualSound('bell').name, demo.sound.name]);
});

test('a value that a scene shares with the bench stays the very same: nothing is worked out or faded to anew', () => {
  const copies = structuredClone(SCENES);
  const { bench, script } = scriptAtHand(copies);
  const { setups, sound, listener } = bench.file;
  script.begin(3);
  expect(bench.file.setups).toEqual(setups);
  for (const i of [0, 1, 2, 3]) expect(bench.file.setups[i]).toBe(setups[i]);
  expect([bench.file.sound === sound, bench.file.listener === listener]).toEqual([true, true]);
  script.step(-1);
  const bell = bench.file.sound;
  script.step(1);
  script.step(-1);
  expect(bench.file.sound).toBe(bell);
});

test('comes back from any slip as the scene was kept', () => {
  const { bench, script, hall, air, sounding, growth } = scriptAtHand();
  script.begin(2);
  flushSync();
  const kept = bench.file;
  bench.turnKnob('width', 0.05);
  bench.setSound(usualSound('horn'));
  bench.setSameLoudness(true);
  bench.setModel('rule');
  bench.listenOn('layout');
  bench.hear(0);
  hall.air = false;
  air.showTone();
  script.toggleBlack();
  growth.before = { index: 1 };
  script.back();
  expect(bench.file).toEqual(kept);
  expect([hall.air, air.mode, script.black]).toEqual([true, 'puff', false]);
  expect(sounding.silence).toHaveBeenCalledExactlyOnceWith(false);
  expect(growth.stop).toHaveBeenCalled();
});

test('leaves the bench as it was left, with its way back; nothing of the run is a step', () => {
  const { bench, script, hall, air, growth } = scriptAtHand();
  bench.hear(2);
  bench.setInches(true);
  const before = bench.file;
  Object.assign(hall, { air: true });
  air.frequency = 700;
  growth.before = 'grown';
  script.begin(1);
  flushSync();
  bench.hear(1);
  bench.turnKnob('width', 0.05);
  growth.before = 'grown in the run';
  script.step(1);
  expect(bench.work).toBe(before);
  script.leave();
  flushSync();
  expect(bench.file).toBe(before);
  expect([hall.open, hall.air, air.frequency, growth.before, script.running]).toEqual([
    false,
    true,
    700,
    'grown',
    false
  ]);
  bench.undo();
  expect(bench.file.view.inches).toBe(false);
  bench.redo();
  expect(bench.file).toEqual(before);
});

test('goes on with the scene that it was left at', () => {
  const { script } = scriptAtHand();
  script.begin();
  script.step(1);
  script.step(1);
  script.leave();
  script.begin();
  expect(script.at).toBe(2);
  script.begin(0);
  expect(script.at).toBe(0);
});

test('keeps in the place of the present scene what has been made of it, with its name, time and words', () => {
  const { bench, script, hall } = scriptAtHand();
  script.begin(3);
  flushSync();
  bench.hear(1);
  bench.turnKnob('width', 0.05);
  hall.air = true;
  script.keepHere();
  flushSync();
  expect(script.running).toBe(true);
  expect(bench.work.script![3]).toMatchObject({
    name: 'Closed box',
    minutes: 1.5,
    shows: 'tone',
    heard: { setup: { name: 'Flat plate', mount: { width: 0.05 } } }
  });
  expect(bench.heard.setup.mount).toMatchObject({ width: 0.05 });
  script.leave();
  expect(bench.heard.setup.name).toBe('Free air');
  bench.undo();
  expect(bench.file.script).toEqual(SCENES);
});

test('a scene of words has no mount to be kept in its place', () => {
  const { bench, script } = scriptAtHand();
  script.begin(0);
  script.keepHere();
  expect(bench.work.script).toEqual(SCENES);
});

test('black hides the picture alone, and goes with the next step', () => {
  const { bench, script } = scriptAtHand();
  script.toggleBlack();
  expect(script.black).toBe(false);
  script.begin(1);
  const heard = bench.file;
  script.toggleBlack();
  expect([script.black, bench.file]).toEqual([true, heard]);
  script.toggleBlack();
  expect(script.black).toBe(false);
  script.toggleBlack();
  script.step(1);
  expect(script.black).toBe(false);
  script.step(1);
  script.toggleBlack();
  script.step(1);
  expect([script.at, script.black], 'at the end, too').toEqual([3, false]);
});

test('tells the time of the scene and of the whole, and when the scene is to be over', () => {
  const { script } = scriptAtHand();
  expect(script.planned).toBe(300);
  script.begin();
  flushSync();
  vi.advanceTimersByTime(40_000);
  expect([script.clock.scene, script.clock.whole, script.due]).toEqual([40, 40, 30]);
  script.step(1);
  vi.advanceTimersByTime(5_000);
  expect([script.clock.scene, script.clock.whole, script.due]).toEqual([5, 45, 90]);
  script.back();
  vi.advanceTimersByTime(1_000);
  expect(script.clock.scene, 'a slip takes nothing of the time').toBe(6);
  script.leave();
  flushSync();
  vi.advanceTimersByTime(10_000);
  expect(vi.getTimerCount(), 'nothing is looked at any more').toBe(0);
  script.begin();
  flushSync();
  expect([script.at, script.clock.scene, script.clock.whole], 'the hall has waited').toEqual([1, 0, 56]);
  script.begin(0);
  expect(script.clock.whole).toBe(0);
});

test('another bench that is opened ends the run', () => {
  const { bench, script, hall } = scriptAtHand();
  hall.air = true;
  script.begin(3);
  flushSync();
  expect(hall.air).toBe(false);
  bench.open(demoBench());
  flushSync();
  expect([script.running, script.scenes, hall.air]).toEqual([false, [], true]);
  bench.undo();
  expect(bench.file.script).toEqual(SCENES);
});

test('the mount of the scene that comes is solved at leisure, by the model that knows it', () => {
  const scenes = SCENES.slice(0, 3).map((scene, i) =>
    i < 2 ? scene : { ...scene, heard: { ...scene.heard!, model: 'rule' as const } }
  );
  const { script } = scriptAtHand(scenes);
  expect(script.coming).toEqual([]);
  script.begin();
  expect(script.coming).toMatchObject([
    { place: 0, atLeisure: true, installation: { mount: { kind: 'free' } } }
  ]);
  script.step(1);
  expect(script.coming, 'the rule of thumb is worked out at once').toEqual([]);
  script.step(1);
  expect(script.coming).toEqual([]);
});

test('without scenes nothing is run', () => {
  const { script, hall } = scriptAtHand([]);
  script.begin();
  expect([script.running, hall.open]).toEqual([false, false]);
});
