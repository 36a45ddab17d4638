import { expect, test } from 'vitest';
import { WaveAnswers } from '../../../src/lib/evaluation/wave-answers.svelte.js';
import type { Wish } from '../../../src/lib/evaluation/wave-jobs.js';
import type { HeardWaves } from '../../../src/lib/waves/curve/heard-waves.js';
import { AIR, IN_FRONT, ovalIn } from '../../helpers/demo-installations.js';
import { poolAtHand } from '../../helpers/pool-at-hand.js';

const heard = (name: string): [HeardWaves] => [{ name } as unknown as HeardWaves];

function wish(place: number, width: number, angleDeg = 0): Wish {
  return {
    place,
    installation: ovalIn({ kind: 'plate', shape: 'rectangle', length: 0.15, width, offset: [0, 0] }),
    air: AIR,
    listener: { ...IN_FRONT, angleDeg }
  };
}

function atHand() {
  const hand = poolAtHand();
  const waves = new WaveAnswers(hand.pool);
  const accuracies = () => hand.open.map(({ question }) => question.accuracy);
  const find = (accuracy: string) => hand.open.find(({ question }) => question.accuracy === accuracy)!;
  return { ...hand, waves, accuracies, find };
}

test('a draft is asked for urgently and the full solution behind it; the better one is given', async () => {
  const { waves, open, find } = atHand();
  const one = wish(0, 0.1);
  expect(waves.best(one)).toBeNull();
  waves.want([one], true);
  expect(open.map(({ question, options }) => [question.accuracy, options.urgent])).toEqual([
    ['draft', true],
    ['full', false]
  ]);
  await find('draft').answer(heard('draft'));
  expect(waves.best(one)).toMatchObject({ accuracy: 'draft', heard: { name: 'draft' } });
  await find('full').answer(heard('full'));
  expect(waves.best(one)).toMatchObject({ accuracy: 'full', heard: { name: 'full' } });
  waves.want([one], true);
  expect(open).toEqual([]);
});

test('while a size is dragged one draft is under way, and the newest size waits for it', async () => {
  const { waves, open, asked } = atHand();
  for (let i = 0; i < 200; i++) waves.want([wish(0, 0.1 + i * 1e-4)], false);
  expect(open.length).toBe(1);
  await open[0].answer(heard('first'));
  expect(open.length).toBe(1);
  await open[0].answer(heard('last'));
  expect(open).toEqual([]);
  expect(asked.length).toBe(2);
  expect(asked.every(({ accuracy }) => accuracy === 'draft')).toBe(true);
  expect(waves.best(wish(0, 0.1199))).toMatchObject({ heard: { name: 'last' } });
});

test('places on the shelf do not wait for each other, and one that is not wanted any more is not drafted', async () => {
  const { waves, open, asked } = atHand();
  waves.want([wish(0, 0.1), wish(1, 0.11)], false);
  expect(open.length).toBe(2);
  waves.want([wish(0, 0.12), wish(1, 0.13)], false);
  waves.want([wish(0, 0.12)], false);
  await open[0].answer(heard('one'));
  await open[0].answer(heard('the other'));
  expect(asked.map(({ installation }) => (installation.mount as { width: number }).width)).toEqual([
    0.1, 0.11, 0.12
  ]);
});

test('what waited behind a draft and is known by then is not asked again', async () => {
  const { waves, open, asked } = atHand();
  waves.want([wish(0, 0.1)], false);
  waves.want([wish(0, 0.2)], false);
  const drafted = waves.draft(wish(0, 0.2));
  await open[1].answer(heard('for the headroom'));
  await drafted;
  await open[0].answer(heard('first'));
  expect(open).toEqual([]);
  expect(asked.length).toBe(2);
});

test('two hundred moves that rest between leave one full solution under way', async () => {
  const { waves, open, accuracies, find } = atHand();
  for (let i = 0; i < 200; i++) waves.want([wish(0, 0.1 + i * 1e-4)], true);
  await open[0].answer(heard('first'));
  expect(accuracies()).toEqual(['full', 'draft']);
  await find('draft').answer(heard('last'));
  await find('full').answer(heard('last'));
  expect(open).toEqual([]);
  expect(waves.best(wish(0, 0.1199))).toMatchObject({ accuracy: 'full' });
  expect(waves.best(wish(0, 0.1198))).toBeNull();
});

test('a full solution that is not wanted any more is given up, and so it is while a size is dragged', () => {
  const { waves, accuracies } = atHand();
  waves.want([wish(0, 0.1)], true);
  waves.want([wish(0, 0.1)], false);
  expect(accuracies()).toEqual(['draft']);
});

test('the first of the wishes is solved first, and no more than two in full at once', async () => {
  const { waves, open, find } = atHand();
  waves.want([wish(2, 0.1), wish(0, 0.11), wish(1, 0.12)], true);
  const widths = () =>
    open
      .filter(({ question }) => question.accuracy === 'full')
      .map(({ question: { installation } }) => (installation.mount as { width: number }).width);
  expect(widths()).toEqual([0.1, 0.11]);
  await find('full').answer(heard('full'));
  expect(widths()).toEqual([0.11, 0.12]);
});

test('another listener of a solved mount is asked for in full at once, also while dragged', async () => {
  const { waves, open, find, accuracies } = atHand();
  waves.want([wish(0, 0.1)], true);
  await find('full').answer(heard('full'));
  await find('draft').answer(heard('draft'));
  waves.want([wish(0, 0.1, 30)], false);
  expect(accuracies()).toEqual(['full']);
  expect(open[0].options.urgent).toBe(true);
});

test('a mount that cannot be solved says why, and is not asked for again until told so', async () => {
  const { waves, open, find } = atHand();
  const one = wish(0, 0.1);
  waves.want([one], true);
  await find('draft').refuse(new Error('too slender'));
  expect(waves.refusal(one)).toBe('too slender');
  await find('full').refuse(new Error('too slender'));
  waves.want([one], true);
  expect(open).toEqual([]);
  waves.resume();
  expect(waves.refusal(one)).toBeNull();
  expect(open.length).toBe(2);
});

test('stopped, drafts alone are made until it is resumed; the progress is that of the first wish', async () => {
  const { waves, accuracies, find } = atHand();
  waves.want([wish(0, 0.1)], true);
  find('full').options.onProgress!(0.4);
  expect(waves.progress).toBe(0.4);
  waves.stop();
  await Promise.resolve();
  expect(accuracies()).toEqual(['draft']);
  waves.want([wish(0, 0.2)], true);
  expect(accuracies()).toEqual(['draft']);
  await find('draft').answer(heard('draft'));
  expect(accuracies()).toEqual(['draft']);
  waves.resume();
  expect(accuracies()).toEqual(['draft', 'full']);
});

test('a draft that was made for the headroom is not made again', async () => {
  const { waves, open } = atHand();
  const asking = waves.draft(wish(0, 0.1));
  const again = waves.draft(wish(0, 0.1));
  expect(open.length).toBe(1);
  await open[0].answer(heard('draft'));
  expect(await again).toMatchObject({ accuracy: 'draft' });
  expect(await asking).toMatchObject({ accuracy: 'draft' });
  expect(await waves.draft(wish(0, 0.1))).toMatchObject({ heard: { name: 'draft' } });
  expect(open).toEqual([]);
});

test('what nobody hears is solved in full alone, behind what is heard, and given up when it is not wanted', async () => {
  const { waves, open, accuracies } = atHand();
  const [here, there] = [wish(0, 0.1), { ...wish(0, 0.12), atLeisure: true }];
  waves.want([here, there], true);
  expect(accuracies()).toEqual(['draft', 'full', 'full']);
  expect(open.at(-1)!.question.installation.mount).toMatchObject({ width: 0.12 });
  expect(open.at(-1)!.options.urgent).toBe(false);
  waves.want([here], true);
  expect(open.map(({ question }) => question.accuracy)).not.toHaveLength(3);
  waves.want([here, there], false);
  expect(accuracies()).toEqual(['draft']);
});
