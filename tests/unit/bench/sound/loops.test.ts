import { expect, test } from 'vitest';
import { Loops } from '../../../../src/lib/bench/sound/loops.js';
import type { Recording } from '../../../../src/lib/bench/sound/open-recording.js';
import { labAtHand } from '../../../helpers/lab-at-hand.js';

const RATE = 8000;

function recording(start: number, end: number): Recording {
  const samples = Float32Array.from({ length: 2 * RATE }, (_, i) => Math.sin(i / 5) * (i / 20000));
  return { id: 7, name: 'mine.wav', samples, sampleRate: RATE, duration: 2, start, end, warning: null };
}

test('the same sound is rendered once, also while it is still being rendered', async () => {
  const { lab, asked } = labAtHand();
  const loops = new Loops(lab);
  const [one, two] = await Promise.all([
    loops.of({ kind: 'pinkNoise' }, null, RATE),
    loops.of({ kind: 'pinkNoise' }, null, RATE)
  ]);
  expect(one).toBe(two);
  expect(asked()).toBe(2); // render, keep
  expect(await loops.of({ kind: 'pinkNoise' }, null, RATE)).toBe(one);
});

test('what is measured is what plays', async () => {
  const { lab } = labAtHand();
  const loop = (await new Loops(lab).of({ kind: 'recording', name: 'mine.wav' }, recording(0, 1), RATE))!;
  expect(loop.figures.peak).toBeCloseTo(Math.max(...loop.samples.map(Math.abs)), 6);
  const zeros = new Float32Array(4096);
  zeros[0] = 1;
  const [heard] = await lab.ask({ kind: 'heardThrough', key: loop.key, impulseResponses: [zeros] });
  expect(heard.peak).toBeCloseTo(loop.figures.peak, 4);
});

test('another stretch is another loop, and the old one is forgotten by the worker', async () => {
  const { lab } = labAtHand();
  const loops = new Loops(lab);
  const sound = { kind: 'recording', name: 'mine.wav' } as const;
  const early = (await loops.of(sound, recording(0, 1), RATE))!;
  const late = (await loops.of(sound, recording(1, 2), RATE))!;
  loops.forgetStretchesBut(late.key);
  expect(late.key).not.toBe(early.key);
  expect(late.figures.peak).toBeGreaterThan(early.figures.peak);
  await expect(
    lab.ask({ kind: 'heardThrough', key: early.key, impulseResponses: [new Float32Array(1024)] })
  ).rejects.toThrow('no sound is kept');
});

test('a recording that is not open gives nothing', async () => {
  const { lab } = labAtHand();
  expect(await new Loops(lab).of({ kind: 'recording', name: 'gone.wav' }, null, RATE)).toBeNull();
});

test('a sound that failed is tried again when it is asked for again', async () => {
  const { lab } = labAtHand();
  const loops = new Loops(lab);
  const sound = { kind: 'recording', name: 'mine.wav' } as const;
  const broken = { ...recording(0, 1), samples: new Float32Array(2 * RATE).fill(NaN) };
  await expect(loops.of(sound, broken, RATE)).rejects.toThrow('finite');
  expect(await loops.of(sound, recording(0, 1), RATE)).not.toBeNull();
});
