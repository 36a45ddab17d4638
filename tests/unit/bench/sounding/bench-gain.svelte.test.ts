import { flushSync } from 'svelte';
import { expect, onTestFinished, test, vi } from 'vitest';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { withLift } from '../../../../src/lib/bench/circumstances.js';
import { BenchGain, type GainParts } from '../../../../src/lib/bench/sounding/bench-gain.svelte.js';
import { USUAL_GAIN } from '../../../../src/lib/bench/sounding/headroom.js';
import type { Loop } from '../../../../src/lib/bench/sounding/sound-cache.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { usualSound } from '../../../../src/lib/sounds/roster.js';
import { aTurn } from '../../../helpers/a-turn.js';

const lift = { gainDb: 6, below: 300 };
const loop = { sound: usualSound('puff') } as unknown as Loop;

/** A bench on the wave solution whose headroom answers for a model when the test says so. */
function atHand({ sure = async () => false, hasPlayed = true } = {}) {
  const waiting: { model: unknown; answer: (gain: number) => void }[] = [];
  const gains: number[] = [];
  const parts: GainParts = {
    bench: new Bench(demoBench()),
    waves: { draft: () => Promise.reject(new Error('none here')) },
    cache: { loop: async () => loop, horn: async () => loop } as never,
    headroom: {
      gain: ({ where: [model] }: { where: unknown[] }) =>
        new Promise<number>((answer) => waiting.push({ model, answer })),
      surelyHasRoom: sure
    } as never,
    playback: {
      room: { setBenchGain: (gain: number) => gains.push(gain) },
      hasPlayed,
      tell: () => undefined
    } as never,
    besides: () => 0
  };
  return { waiting, gains, parts };
}

test('what was found for the chosen model is not taken back by what the first sound had asked for before', async () => {
  const { waiting, gains, parts } = atHand();
  const gain = new BenchGain(parts);
  const leave = $effect.root(() => gain.connect(() => loop));
  flushSync();
  const prepared = gain.prepare(loop);
  await aTurn();
  expect(waiting.map(({ model }) => model)).toEqual(['rule', 'rule']);
  // The bench's own question goes through both models while that of the first sound is still open.
  waiting[0].answer(0.5);
  await aTurn();
  expect(waiting.at(-1)!.model).toBe('wave');
  waiting.at(-1)!.answer(0.3);
  await aTurn();
  waiting[1].answer(0.5);
  expect(await prepared).toBe(0.3);
  flushSync();
  expect(gains.at(-1)).toBe(0.3);
  const byWave = { computed: { answer: { model: 'wave', lift: null } } } as never;
  expect(gain.hasRoomFor(byWave)).toBe(true);
  leave();
});

test('what surely has room for the usual gain plays with it at once, and what was found for all is not turned up again', async () => {
  const { waiting, parts } = atHand({ sure: async () => (await aTurn(), true) });
  const alone = new BenchGain(parts);
  expect(await alone.prepare(loop)).toBe(USUAL_GAIN);
  expect([alone.value, alone.hasRoomForAll]).toEqual([USUAL_GAIN, false]);
  expect(waiting).toEqual([]);

  const gain = new BenchGain(parts);
  const leave = $effect.root(() => gain.connect(() => loop));
  flushSync();
  await aTurn();
  // All is found while the first sound is being prepared.
  const prepared = gain.prepare(loop);
  waiting[0].answer(0.3);
  expect(await prepared).toBe(0.3);
  expect(gain.hasRoomForAll).toBe(true);
  // The next time all is asked at once.
  const again = gain.prepare(loop);
  await aTurn();
  waiting.at(-1)!.answer(0.3);
  expect(await again).toBe(0.3);
  leave();
});

test('before it is first played, all is found once the bench has been left alone', async () => {
  vi.useFakeTimers();
  onTestFinished(() => void vi.useRealTimers());
  const { waiting, parts } = atHand({ hasPlayed: false });
  const bench = parts.bench as Bench;
  const gain = new BenchGain(parts);
  const leave = $effect.root(() => gain.connect(() => loop));
  for (const celsius of [5, 10, 15]) {
    bench.setTemperature(celsius);
    flushSync();
    await vi.advanceTimersByTimeAsync(1500);
  }
  expect(waiting).toEqual([]);
  await vi.advanceTimersByTimeAsync(600);
  expect(waiting.map(({ model }) => model)).toEqual(['rule']);
  leave();
});

test('what is lifted waits for a gain that has room for it; less of a lift does not', async () => {
  const { waiting, parts } = atHand();
  const bench = parts.bench as Bench;
  bench.setModel('rule');
  const gain = new BenchGain(parts);
  const leave = $effect.root(() => gain.connect(() => loop));
  flushSync();
  await aTurn();
  const answer = async (value: number): Promise<void> => {
    waiting.at(-1)!.answer(value);
    await aTurn();
  };
  await answer(0.5);
  const heard = (): never => bench.heard as never;
  expect(gain.hasRoomFor(heard())).toBe(true);
  const asked = waiting.length;
  expect(bench.revise((file) => withLift(file, lift))).toBeNull();
  flushSync();
  await aTurn();
  expect(waiting.length).toBe(asked + 1);
  expect(gain.hasRoomFor(heard())).toBe(false);
  await answer(0.3);
  expect(gain.hasRoomFor(heard())).toBe(true);
  bench.revise((file) => withLift(file, { ...lift, gainDb: 3 }));
  expect(gain.hasRoomFor(heard())).toBe(true);
  bench.revise((file) => withLift(file, { ...lift, gainDb: 0 }));
  expect(bench.file).not.toHaveProperty('lift');
  expect(gain.hasRoomFor(heard())).toBe(true);
  leave();
});
