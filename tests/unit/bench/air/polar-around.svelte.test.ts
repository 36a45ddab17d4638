import { flushSync } from 'svelte';
import { afterEach, expect, test } from 'vitest';
import { PolarAround } from '../../../../src/lib/bench/air/polar-around.svelte.js';
import { airAtHand, PLATE, SHELL, stand } from './air-at-hand.svelte.js';

let end = (): void => undefined;
afterEach(() => end());

function polarAtHand() {
  const hand = airAtHand();
  const polar = new PolarAround(hand.question, hand.pool, hand.report);
  end = $effect.root(() => polar.connect());
  flushSync();
  const point = (frequency: number): void => {
    hand.question.frequency = frequency;
    flushSync();
  };
  const watch = (): (() => void) => {
    const leave = hand.question.watch();
    flushSync();
    return () => {
      leave();
      flushSync();
    };
  };
  return { ...hand, polar, point, watch };
}

test('level is asked every 3 degrees all round, at once, at the pointed frequency', async () => {
  const { polar, open, watch } = polarAtHand();
  expect(open).toEqual([]);
  watch();
  expect(open[0].question).toMatchObject({
    kind: 'polar',
    installation: PLATE,
    frequency: 1000,
    plane: 'length'
  });
  expect(open[0].options.urgent).toBe(true);
  const { anglesDeg } = open[0].question as { anglesDeg: Float64Array };
  expect([anglesDeg.length, anglesDeg[0], anglesDeg[1], anglesDeg.at(-1)]).toEqual([121, -180, -177, 180]);
  const levelDb = new Float64Array(121).fill(-3);
  await open[0].answer(levelDb);
  expect(polar.current).toEqual({
    installation: PLATE,
    frequency: 1000,
    anglesDeg,
    levelDb,
    againstDb: null
  });
});

test('the last picture stays until the next is there, and of many frequencies the newest comes next', async () => {
  const { polar, open, asked, point, watch } = polarAtHand();
  watch();
  await open[0].answer(new Float64Array(121));
  for (const frequency of [400, 500, 600, 700]) point(frequency);
  expect(polar.current?.frequency).toBe(1000);
  await open[0].answer(new Float64Array(121));
  expect(polar.current?.frequency).toBe(400);
  await open[0].answer(new Float64Array(121));
  expect(polar.current?.frequency).toBe(700);
  expect(open).toEqual([]);
  expect(asked.length).toBe(3);
});

test('the mount that levels are written against is asked, too, and shown with it', async () => {
  const { polar, open, watch, measureAgainst } = polarAtHand();
  measureAgainst(stand(SHELL));
  watch();
  expect(open.map(({ question }) => question.installation)).toEqual([PLATE, SHELL]);
  await open[0].answer(new Float64Array(121).fill(1));
  expect(polar.current).toBeNull();
  await open[0].answer(new Float64Array(121).fill(2));
  expect([polar.current!.levelDb[0], polar.current!.againstDb![0]]).toEqual([1, 2]);
});

test('each with its speaker’s drive in, as the curves are', async () => {
  const { polar, open, watch, hear, measureAgainst } = polarAtHand();
  hear(stand(PLATE, { solvedTo: 8000, drive: 0.5 }));
  measureAgainst(stand(SHELL, { solvedTo: 8000, drive: 10 }));
  watch();
  await open[0].answer(new Float64Array(121).fill(1));
  await open[0].answer(new Float64Array(121).fill(2));
  expect(polar.current!.levelDb[0]).toBeCloseTo(1 - 6.0206, 3);
  expect(polar.current!.againstDb![0]).toBeCloseTo(2 + 20, 9);
});

test('what waits is forgotten when nobody looks any more', async () => {
  const { open, asked, point, watch } = polarAtHand();
  const leave = watch();
  point(500);
  leave();
  await open[0].answer(new Float64Array(121));
  expect(asked.length).toBe(1);
});

test('a refusal is reported and leaves the last picture; the next answer takes it back', async () => {
  const { polar, open, point, watch, reports } = polarAtHand();
  watch();
  await open[0].answer(new Float64Array(121));
  point(500);
  await open[0].refuse(new Error('too slender'));
  expect(polar.current?.frequency).toBe(1000);
  point(600);
  await open[0].answer(new Float64Array(121));
  expect(reports).toEqual([null, 'too slender', null]);
});
