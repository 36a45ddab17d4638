import { flushSync } from 'svelte';
import { drivenAnswer } from '../../../../src/lib/evaluation/answer.js';
import { expect, test, vi } from 'vitest';
import type { Stand } from '../../../../src/lib/evaluation/stand.js';
import { limitsOf } from '../../../../src/lib/evaluation/limits.js';
import { Strains } from '../../../../src/lib/bench/sounding/strains.svelte.js';
import { SoundCache } from '../../../../src/lib/bench/sounding/sound-cache.js';
import { usualSound } from '../../../../src/lib/sounds/roster.js';
import { computedByRule } from '../../../helpers/by-rule.js';
import { DEMO } from '../../../helpers/demo-installations.js';
import { labAtHand } from '../../../helpers/lab-at-hand.js';

const RATE = 48000;

function stand(index: number, name: string): Stand {
  const installation = DEMO[name];
  return {
    index,
    installation,
    computed: computedByRule(installation, RATE),
    problem: null
  } as unknown as Stand;
}

test('the strain of the heard mount is asked for while somebody looks, and only what is not known', async () => {
  const { lab, asked } = labAtHand();
  const loop = (await new SoundCache(lab).loop(usualSound('pinkNoise'), null, RATE))!;
  const told: unknown[] = [];
  const strains = new Strains(lab, (error) => told.push(error));
  let heard = $state.raw(stand(0, 'flat plate'));
  const box = stand(1, 'closed box');
  const end = $effect.root(() => strains.connect(() => ({ stand: heard, loop, sampleRate: RATE })));
  flushSync();
  const before = asked();
  const leave = strains.watch();
  flushSync();
  await vi.waitFor(() => expect(strains.of?.place).toBe(0));
  expect(asked()).toBe(before + 1);

  heard = box;
  flushSync();
  await vi.waitFor(() => expect(strains.of?.place).toBe(1));
  const inTheBox = limitsOf(strains.current!, 1, box.installation.speaker.motor, null)!;
  expect(inTheBox.travel).toBeGreaterThan(0);

  leave();
  flushSync();
  heard = stand(0, 'flat plate');
  flushSync();
  await new Promise((resolve) => setTimeout(resolve, 20));
  expect(strains.of?.place, 'nobody looks').toBe(1);

  // the spring of the box holds the cone back
  strains.watch();
  flushSync();
  await vi.waitFor(() => expect(strains.of?.place).toBe(0));
  const onThePlate = limitsOf(strains.current!, 1, box.installation.speaker.motor, null)!;
  expect(onThePlate.travel).toBeGreaterThan(1.5 * inTheBox.travel);
  expect(told).toEqual([]);
  end();
});

test('with a lift it is known beside that without; another lift asks for one more only', async () => {
  const { lab, asked } = labAtHand();
  const loop = (await new SoundCache(lab).loop(usualSound('pinkNoise'), null, RATE))!;
  const strains = new Strains(lab, (error) => expect.fail(String(error)));
  const plain = stand(0, 'flat plate');
  const lifted = (gainDb: number): Stand => {
    const answer = drivenAnswer(plain.computed!.answer, { drive: 1, lift: { gainDb, below: 300 } });
    return { ...plain, computed: { ...plain.computed!, answer } };
  };
  let heard = $state.raw(lifted(6));
  const end = $effect.root(() => strains.connect(() => ({ stand: heard, loop, sampleRate: RATE })));
  const before = asked();
  strains.watch();
  flushSync();
  await vi.waitFor(() => expect(strains.of?.answer).toBe(heard.computed!.answer));
  expect(asked()).toBe(before + 2);
  const { motor } = plain.installation.speaker;
  const limits = () => [strains.unlifted!, strains.current!].map((one) => limitsOf(one, 1, motor, null)!);
  const [without, six] = limits();
  expect(six.travel).toBeGreaterThan(1.2 * without.travel);
  expect(six.terminals).toBeGreaterThan(1);

  heard = lifted(12);
  flushSync();
  await vi.waitFor(() => expect(strains.of?.answer).toBe(heard.computed!.answer));
  expect(asked()).toBe(before + 3);
  const [again, twelve] = limits();
  expect(again).toEqual(without);
  expect(twelve.travel).toBeGreaterThan(1.2 * six.travel);
  end();
});
