import { flushSync } from 'svelte';
import { expect, onTestFinished, test } from 'vitest';
import { Hearing } from '../../../../src/lib/bench/sounding/hearing.svelte.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { usualSound } from '../../../../src/lib/sounds/roster.js';
import { soundingAtHand, fakeRoom, rested, settled } from './sounding-at-hand.svelte.js';

test('nobody names what is heard blind, until it is over', () => {
  let heard = $state(1);
  const { room, deeds } = fakeRoom();
  const bench = {
    get file() {
      const file = demoBench();
      return { ...file, view: { ...file.view, heard } };
    }
  };
  const hearing = new Hearing(bench, { room });
  onTestFinished($effect.root(() => hearing.connect()));
  flushSync();
  expect([hearing.place, hearing.among]).toEqual([1, null]);
  hearing.listenBlind([0, 3]);
  flushSync();
  expect(hearing.place, 'until a letter is heard, what was heard before').toBe(1);
  hearing.hearBlindly(3);
  heard = 2;
  flushSync();
  expect([hearing.place, hearing.among]).toEqual([3, [0, 3]]);
  expect(deeds).toEqual(['hear 1', 'hear across a pause 3']);
  hearing.listenBlind(null);
  flushSync();
  expect([hearing.place, hearing.among]).toEqual([2, null]);
  expect(deeds.at(-1)).toBe('hear 2');
  hearing.listenBlind([0, 3], { levelled: false });
  expect(hearing.levelled).toBe(false);
  hearing.listenBlind([0, 3]);
  expect(hearing.levelled).toBe(true);
});

test('before there is a room it is known what is to be heard', () => {
  const hearing = new Hearing({ file: demoBench() }, { room: null });
  hearing.listenBlind([1, 2]);
  hearing.hearBlindly(2);
  expect(hearing.place).toBe(2);
});

test('another mount, heard while the first sound is being prepared, is the one that is heard', async () => {
  const { sounding, bench, hold, letGo, deeds } = soundingAtHand();
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

test('who listens blind hears across a pause what he is given, and afterwards the heard mount again', async () => {
  const { sounding, bench, since } = soundingAtHand();
  await sounding.play();
  await rested();
  expect(sounding.settled).toBe(true);
  sounding.hearing.listenBlind([1, 3]);
  await settled();
  sounding.hearing.hearBlindly(3);
  bench.hear(2);
  await settled();
  expect(since('play').filter((deed) => deed.startsWith('hear'))).toEqual(['hear across a pause 3']);
  // Stopped and begun again, it is still that one.
  sounding.stop();
  await sounding.play();
  await rested();
  expect(since('volume 0.25').filter((deed) => deed.startsWith('hear'))).toEqual([]);
  sounding.hearing.listenBlind(null);
  await settled();
  expect(since('play').filter((deed) => deed.startsWith('hear'))).toEqual(['hear 2']);
});
