import { expect, test } from 'vitest';
import { soundingAtHand, rested, settled } from './sounding-at-hand.svelte.js';

test('a recording whose file is not open says so, stops what plays and forgets its levels', async () => {
  const { sounding, bench, deeds } = soundingAtHand();
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
  const { sounding, bench } = soundingAtHand();
  await sounding.ownRecording.open(new File([], 'mine.wav'));
  expect(bench.file.sound).toEqual({ kind: 'recording', name: 'mine.wav' });
  expect(sounding.ownRecording.current).toMatchObject({ name: 'mine.wav', start: 0, end: 4 });
  await rested();
  expect(sounding.loop?.key).toBe('recording 1 0 4');
});
