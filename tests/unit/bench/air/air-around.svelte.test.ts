import { flushSync } from 'svelte';
import { afterEach, expect, test } from 'vitest';
import { AirAround } from '../../../../src/lib/bench/air/air-around.svelte.js';
import { close } from '../../../helpers/close.js';
import { airAtHand, image, PLATE, SHELL, stand } from './air-at-hand.svelte.js';

let end = (): void => undefined;
afterEach(() => end());

function aroundAtHand() {
  const hand = airAtHand();
  hand.hear(stand(PLATE, { solvedTo: 400 }));
  const air = new AirAround(hand.bench, hand.pool, hand.section);
  end = $effect.root(() => air.connect());
  flushSync();
  const kinds = () => hand.open.map(({ question }) => question.kind);
  const find = (kind: string) => hand.open.find(({ question }) => question.kind === kind)!;
  return { ...hand, air, kinds, find };
}

test('looked at, it is asked all round and in a section; a puff takes the place of the tone, and the tone of the puff', async () => {
  const { air, kinds, find } = aroundAtHand();
  expect(kinds()).toEqual([]);
  air.watch();
  flushSync();
  expect(kinds()).toEqual(['polar', 'field']);
  await find('polar').answer(new Float64Array(121));
  await find('field').answer([image()]);
  air.makePuff();
  flushSync();
  expect([air.mode, air.progress]).toEqual(['puff', 0]);
  expect(kinds()).toEqual(['puff']);
  air.showTone();
  flushSync();
  expect([air.mode, air.progress]).toEqual(['tone', null]);
  expect(kinds()).toEqual(['field']);
});

test('its one sentence is of the picture that was tried last', async () => {
  const { air, find } = aroundAtHand();
  air.watch();
  flushSync();
  await find('polar').refuse(new Error('The mount is too slender to be solved.'));
  expect(air.problem).toBe('The mount is too slender to be solved.');
  await find('field').answer([image()]);
  expect(air.problem).toBeNull();
});

test('full strength is the pressure 4 cm in front of a cone in an endless plate', () => {
  const { air } = aroundAtHand();
  const cone = PLATE.speaker.cone as { length: number; width: number };
  close(air.fullScale(PLATE), ((Math.PI / 4) * cone.length * cone.width) / (2 * Math.PI * 0.04), {
    rel: 1e-12,
    because: 'an ellipse'
  });
});

test('the last picture stays while a puff is worked out: the tone, then the puff of the mount before', async () => {
  const { air, open, find, hear } = aroundAtHand();
  expect(air.picture).toBeNull();
  air.watch();
  flushSync();
  await find('field').answer([image()]);
  const { tone } = air;
  expect(air.picture).toEqual({ tone });
  air.makePuff();
  flushSync();
  expect([air.puff, air.picture]).toEqual([null, { tone }]);
  const answerPuff = async (): Promise<void> => {
    for (const { question, answer } of open.filter(({ question }) => question.kind === 'puff'))
      await answer([...(question as { frequencies: Float64Array }).frequencies].map((f) => image(f)));
  };
  await answerPuff();
  const { puff } = air;
  expect(air.picture).toEqual({ puff });
  hear(stand(SHELL, { solvedTo: 400 }));
  air.makePuff();
  flushSync();
  expect([air.puff, air.picture]).toEqual([null, { puff }]);
  await answerPuff();
  expect(air.picture).toEqual({ puff: air.puff });
  expect(air.puff!.installation).toBe(SHELL);
});
