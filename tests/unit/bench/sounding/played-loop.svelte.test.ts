import { expect, test, vi } from 'vitest';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import type { MovingSound } from '../../../../src/lib/sounds/kinds.js';
import { usualSound } from '../../../../src/lib/sounds/roster.js';
import { soundingAtHand, rested, settled } from './sounding-at-hand.svelte.js';

const notch = (to: number): MovingSound => ({ ...(usualSound('diesel') as MovingSound), notch: to });

test('another sound, chosen while the first is being prepared, is faded to once it plays', async () => {
  const { sounding, bench, hold, letGo, since } = soundingAtHand();
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

test('a moved lever rides to its loop; a lever on its way renders nothing at what it passes', async () => {
  const { sounding, bench, asked, since } = soundingAtHand({ file: { ...demoBench(), sound: notch(1) } });
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
  const { sounding, bench, hold, letGo, since } = soundingAtHand();
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

test('a sound is tried in the place of the bench’s, which stays as it is, and comes back after it', async () => {
  const { sounding, bench, asked, since, peaks } = soundingAtHand();
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
  const { sounding, bench, since } = soundingAtHand();
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
