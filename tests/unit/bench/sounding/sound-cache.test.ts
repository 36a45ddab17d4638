import { measureSound } from '../../../../src/lib/listening/measure-sound.js';
import { peak } from '../../../../src/lib/listening/peak.js';
import { type MovingSound, movingKind } from '../../../../src/lib/sounds/kinds.js';
import { settledAt } from '../../../../src/lib/sounds/motion/motion.js';
import { ALIGNED } from '../../../../src/lib/workers/sound/sound-bank.js';
import { close } from '../../../helpers/close.js';
import { usualSound } from '../../../../src/lib/sounds/roster.js';
import { expect, test } from 'vitest';
import { SoundCache } from '../../../../src/lib/bench/sounding/sound-cache.js';
import type { Recording } from '../../../../src/lib/bench/sounding/open-recording.js';
import { labAtHand } from '../../../helpers/lab-at-hand.js';

const RATE = 8000;

function recording(start: number, end: number): Recording {
  const samples = Float32Array.from({ length: 2 * RATE }, (_, i) => Math.sin(i / 5) * (i / 20000));
  return { id: 7, name: 'mine.wav', samples, sampleRate: RATE, duration: 2, start, end, warning: null };
}

test('the same sound is rendered once, also while it is still being rendered', async () => {
  const { lab, asked } = labAtHand();
  const cache = new SoundCache(lab);
  const [one, two] = await Promise.all([
    cache.loop(usualSound('pinkNoise'), null, RATE),
    cache.loop(usualSound('pinkNoise'), null, RATE)
  ]);
  expect(one).toBe(two);
  expect(asked()).toBe(2); // render, keep
  expect(await cache.loop(usualSound('pinkNoise'), null, RATE)).toBe(one);
});

test('what is measured is what plays', async () => {
  const { lab } = labAtHand();
  const loop = (await new SoundCache(lab).loop(
    { kind: 'recording', name: 'mine.wav' },
    recording(0, 1),
    RATE
  ))!;
  const figures = await loop.figures();
  expect(figures.peak).toBeCloseTo(Math.max(...loop.samples.map(Math.abs)), 6);
  const zeros = new Float32Array(4096);
  zeros[0] = 1;
  const { key } = loop;
  const [peak] = await lab.ask({ kind: 'peaksThrough', key, impulseResponses: [zeros] });
  expect(peak).toBeCloseTo(figures.peak, 4);
});

test('a recording is brought to the loudness of all sounds, and so is what is generated', async () => {
  const { lab } = labAtHand();
  const cache = new SoundCache(lab);
  const quiet = recording(0, 2);
  quiet.samples = quiet.samples.map((x) => x / 30);
  const own = (await cache.loop({ kind: 'recording', name: 'mine.wav' }, quiet, RATE))!;
  close((await own.figures()).loudness, ALIGNED, { abs: 0.01, because: 'single precision' });
  for (const kind of ['diesel', 'bell', 'sweep'] as const) {
    const { figures: ask, samples } = (await cache.loop(usualSound(kind), null, RATE))!;
    const figures = await ask();
    close(figures.loudness, ALIGNED, { abs: 0.01, because: 'single precision' });
    expect(figures.peak).toBe(peak(samples));
  }
});

test('a loop is there before anything is measured of it, and its figures are asked for once, again after a failure', async () => {
  const { lab, kinds } = labAtHand();
  const loop = (await new SoundCache(lab).loop(usualSound('pinkNoise'), null, RATE))!;
  expect(kinds).toEqual(['sound', 'keep']);
  const [one, two] = await Promise.all([loop.figures(), loop.figures()]);
  expect(one).toBe(two);
  expect(one).toEqual(measureSound(loop.samples, RATE));
  expect(kinds).toEqual(['sound', 'keep', 'figures']);

  const other = (await new SoundCache(lab).loop(usualSound('sweep'), null, RATE))!;
  await lab.ask({ kind: 'forget', key: other.key });
  await expect(other.figures()).rejects.toThrow('no sound is kept');
  await lab.ask({ kind: 'keep', key: other.key, samples: other.samples, sampleRate: RATE });
  expect((await other.figures()).peak).toBe(peak(other.samples));
});

test('another stretch is another loop; those used longest ago are forgotten, by the worker too', async () => {
  const { lab } = labAtHand();
  const cache = new SoundCache(lab);
  const sound = { kind: 'recording', name: 'mine.wav' } as const;
  const early = (await cache.loop(sound, recording(0, 1), RATE))!;
  const kept = (await cache.loop(sound, recording(1, 2), RATE))!;
  expect(kept.key).not.toBe(early.key);
  for (let i = 1; i <= 7; i++) {
    await cache.loop(sound, recording(0.1 * i, 1.5), RATE);
    expect(await cache.loop(sound, recording(1, 2), RATE)).toBe(kept);
  }
  const heard = (key: string) =>
    lab.ask({ kind: 'loudnessThrough', key, impulseResponses: [new Float32Array(1024)] });
  await expect(heard(early.key)).rejects.toThrow('no sound is kept');
  await expect(heard(kept.key)).resolves.toHaveLength(1);
});

test('the name of a sound does not make another one of it, its knobs do', async () => {
  const { lab } = labAtHand();
  const cache = new SoundCache(lab);
  const sound = usualSound('pinkNoise');
  const one = await cache.loop(sound, null, RATE);
  expect(await cache.loop({ ...sound, name: 'mine' }, null, RATE)).toBe(one);
  expect(await cache.loop({ ...sound, seed: 5 } as typeof sound, null, RATE)).not.toBe(one);
});

test('a ride ends in the loop that is there for its notch', async () => {
  const { lab } = labAtHand();
  const cache = new SoundCache(lab);
  const machine = usualSound('diesel') as MovingSound;
  const from = settledAt(movingKind(machine).target(machine));
  const { ride, loop } = await cache.ride({ ...machine, notch: 6 }, from, RATE);
  const { samples, figures } = await loop;
  expect(samples).toEqual(ride.samples.slice(ride.loopFrom));
  expect((await figures()).loudness).toBeGreaterThan(ALIGNED + 1);
  expect(await cache.loop({ ...machine, notch: 6 }, null, RATE)).toBe(await loop);
});

test('a recording that is not open gives nothing', async () => {
  const { lab } = labAtHand();
  expect(await new SoundCache(lab).loop({ kind: 'recording', name: 'gone.wav' }, null, RATE)).toBeNull();
});

test('a sound that failed is tried again when it is asked for again', async () => {
  const { lab } = labAtHand();
  const cache = new SoundCache(lab);
  const sound = { kind: 'recording', name: 'mine.wav' } as const;
  const broken = { ...recording(0, 1), samples: new Float32Array(2 * RATE).fill(NaN) };
  await expect(cache.loop(sound, broken, RATE)).rejects.toThrow('finite');
  expect(await cache.loop(sound, recording(0, 1), RATE)).not.toBeNull();
});
