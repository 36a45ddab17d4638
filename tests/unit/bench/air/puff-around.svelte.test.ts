import { flushSync } from 'svelte';
import { afterEach, expect, test } from 'vitest';
import { PuffAround } from '../../../../src/lib/bench/air/puff-around.svelte.js';
import { airAtHand, image, PLATE, SHELL, stand } from './air-at-hand.svelte.js';

let end = (): void => undefined;
afterEach(() => end());

/** Harmonics every 200 Hz up to 2 kHz: ten, in three questions. */
function puffAtHand() {
  const hand = airAtHand();
  hand.hear(stand(PLATE, { solvedTo: 2000 }));
  const puff = new PuffAround(hand.question, hand.pool, hand.section, hand.report);
  end = $effect.root(() => puff.connect());
  const leave = hand.question.watch();
  flushSync();
  const answerAll = async (): Promise<void> => {
    for (const { question, answer } of [...hand.open])
      await answer([...(question as { frequencies: Float64Array }).frequencies].map((f) => image(f)));
  };
  return { ...hand, puff, leave, answerAll };
}

test('its harmonics are asked in parts, joined in their order, and covered', async () => {
  const { puff, open, covered } = puffAtHand();
  puff.make();
  const parts = open.map(({ question }) => [...(question as { frequencies: Float64Array }).frequencies]);
  expect(parts).toEqual([
    [200, 400, 600, 800],
    [1000, 1200, 1400, 1600],
    [1800, 2000]
  ]);
  expect(open[0].question).toMatchObject({ kind: 'puff', installation: PLATE, accuracy: 'full' });
  for (const at of [2, 1, 0]) {
    expect(puff.current).toBeNull();
    await open[at].answer(parts[at].map((f) => image(f)));
  }
  const frequencies = parts.flat();
  expect(puff.current?.installation).toBe(PLATE);
  expect([...puff.current!.field.frequencies]).toEqual(frequencies);
  expect(puff.current!.field.images.map(({ re }) => re[0])).toEqual(frequencies);
  expect(covered).toEqual([{ images: puff.current!.field.images, installation: PLATE, columns: 12 }]);
});

test('its progress is the share of all harmonics, and is over with it', async () => {
  const { puff, open, answerAll } = puffAtHand();
  expect(puff.progress).toBeNull();
  puff.make();
  expect(puff.progress).toBe(0);
  open[0].options.onProgress!(0.5);
  expect(puff.progress).toBeCloseTo(0.2, 12);
  open[2].options.onProgress!(1);
  expect(puff.progress).toBeCloseTo(0.4, 12);
  await answerAll();
  expect(puff.progress).toBeNull();
});

test('it is made once: not while it is being made, and not when it is there', async () => {
  const { puff, asked, answerAll } = puffAtHand();
  puff.make();
  puff.make();
  await answerAll();
  puff.make();
  expect(asked.length).toBe(3);
});

test('a better answer for the same mount keeps it', async () => {
  const { puff, hear, measureAgainst, answerAll } = puffAtHand();
  puff.make();
  await answerAll();
  const made = puff.current;
  hear(stand(PLATE, { solvedTo: 8000 }));
  measureAgainst(stand(SHELL));
  expect(puff.current).toBe(made);
});

for (const [what, change] of [
  ['another mount', ({ hear }) => hear(stand(SHELL, { solvedTo: 2000 }))],
  ['another air', ({ setTemperature }) => setTemperature(5)],
  ['another side', ({ listenIn }) => listenIn('width')]
] as [string, (hand: ReturnType<typeof puffAtHand>) => void][])
  test(`${what} drops it, and gives up the one that is being made`, async () => {
    const hand = puffAtHand();
    const { puff, open, answerAll, reports } = hand;
    puff.make();
    await answerAll();
    expect(puff.current).not.toBeNull();
    change(hand);
    expect(puff.current).toBeNull();
    puff.make();
    expect(open.length).toBe(3);
    hand.hear(stand(structuredClone(PLATE), { solvedTo: 2000 }));
    expect([open.length, puff.progress]).toEqual([0, null]);
    expect(reports).toEqual([null]);
  });

test('stopped, it asks no more and says nothing; made again, it begins anew', async () => {
  const { puff, open, answerAll, reports } = puffAtHand();
  puff.make();
  open[0].options.onProgress!(1);
  puff.stop();
  expect([open.length, puff.progress]).toEqual([0, null]);
  puff.make();
  await Promise.resolve();
  expect([open.length, puff.progress]).toEqual([3, 0]);
  await answerAll();
  expect(puff.current).not.toBeNull();
  expect(reports).toEqual([null]);
});

test('one part refused, the others are given up and the reason is reported; it can be made again', async () => {
  const { puff, open, answerAll, reports } = puffAtHand();
  puff.make();
  await open[1].refuse(new Error('too slender'));
  expect([open.length, puff.progress, puff.current]).toEqual([0, null, null]);
  puff.make();
  await answerAll();
  expect(puff.current).not.toBeNull();
  expect(reports).toEqual(['too slender', null]);
});

test('nothing is asked while nobody looks', () => {
  const { puff, open, leave } = puffAtHand();
  leave();
  puff.make();
  expect([open.length, puff.progress]).toEqual([0, null]);
});

test('what was made is there again when one comes back to its mount, and nothing is asked anew', async () => {
  const { puff, hear, asked, answerAll, setTemperature } = puffAtHand();
  puff.make();
  await answerAll();
  const made = puff.current;
  hear(stand(SHELL, { solvedTo: 2000 }));
  expect(puff.current).toBeNull();
  expect(puff.before).toBe(made);
  hear(stand(PLATE, { solvedTo: 2000 }));
  expect(puff.current).toBe(made);
  puff.make();
  expect(asked.length).toBe(3);
  // In another air it would be a lie.
  hear(stand(SHELL, { solvedTo: 2000 }));
  setTemperature(5);
  hear(stand(PLATE, { solvedTo: 2000 }));
  expect(puff.current).toBeNull();
});
