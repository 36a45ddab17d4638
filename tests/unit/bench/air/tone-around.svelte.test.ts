import { flushSync } from 'svelte';
import { afterEach, expect, test } from 'vitest';
import { ToneAround } from '../../../../src/lib/bench/air/tone-around.svelte.js';
import { airAtHand, image, PLATE, SHELL, stand } from './air-at-hand.svelte.js';

let end = (): void => undefined;
afterEach(() => end());

function toneAtHand() {
  const hand = airAtHand();
  const tone = new ToneAround(hand.question, hand.pool, hand.section, hand.report);
  end = $effect.root(() => tone.connect());
  hand.question.watch();
  flushSync();
  return { ...hand, tone };
}

test('pressure is asked on the section’s grid, and the cone is covered before it is shown', async () => {
  const { tone, open, covered, section } = toneAtHand();
  const grid = section.grid(PLATE, 'length');
  expect(open[0].question).toMatchObject({ kind: 'field', installation: PLATE, grid });
  expect([...(open[0].question as { frequencies: Float64Array }).frequencies]).toEqual([1000]);
  expect(open[0].options.urgent).toBe(true);
  const found = image();
  await open[0].answer([found]);
  expect(covered).toEqual([{ images: [found], installation: PLATE, columns: 12 }]);
  expect(tone.current).toEqual({ installation: PLATE, grid, image: found, frequency: 1000, beside: null });
});

test('the mount beside it has a third of the pixels each way, and is covered as well', async () => {
  const { tone, open, covered, measureAgainst } = toneAtHand();
  await open[0].answer([image()]);
  measureAgainst(stand(SHELL));
  expect(
    open.map(({ question }) => (question as { grid: { columns: number; rows: number } }).grid)
  ).toMatchObject([
    { columns: 12, rows: 6 },
    { columns: 4, rows: 2 }
  ]);
  await open[1].answer([image()]);
  await open[0].answer([image()]);
  expect(tone.current?.beside).toMatchObject({ installation: SHELL, grid: { columns: 4, rows: 2 } });
  expect(covered.slice(1).map(({ installation, columns }) => [installation, columns])).toEqual([
    [SHELL, 4],
    [PLATE, 12]
  ]);
});

test('another plane is asked while the last picture stays', async () => {
  const { tone, open, listenIn } = toneAtHand();
  await open[0].answer([image()]);
  listenIn('width');
  expect(tone.current?.grid.plane).toBe('length');
  await open[0].answer([image()]);
  expect(tone.current?.grid.plane).toBe('width');
});

test('no tone is asked while a puff is looked at', async () => {
  const { question, open, listenIn } = toneAtHand();
  await open[0].answer([image()]);
  question.mode = 'puff';
  listenIn('width');
  expect(open).toEqual([]);
  question.mode = 'tone';
  flushSync();
  expect(open.length).toBe(1);
});

test('a refusal is reported and leaves the last picture', async () => {
  const { tone, open, listenIn, reports } = toneAtHand();
  await open[0].answer([image()]);
  listenIn('width');
  await open[0].refuse(new Error('too slender'));
  expect(tone.current?.grid.plane).toBe('length');
  expect(reports).toEqual([null, 'too slender']);
});
