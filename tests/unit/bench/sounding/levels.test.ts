import { usualSound } from '../../../../src/lib/sounds/roster.js';
import { expect, test, vi } from 'vitest';
import type { LabClient } from '../../../../src/lib/workers/sound/client.js';
import type { Stand } from '../../../../src/lib/evaluation/stand.js';
import { Levels } from '../../../../src/lib/bench/sounding/levels.svelte.js';
import { SoundCache } from '../../../../src/lib/bench/sounding/sound-cache.js';
import { computedByRule } from '../../../helpers/by-rule.js';
import { DEMO } from '../../../helpers/demo-installations.js';
import { close } from '../../../helpers/close.js';
import { labAtHand } from '../../../helpers/lab-at-hand.js';

const RATE = 48000;

function stand(index: number, name: string): Stand {
  const installation = DEMO[name];
  const computed = computedByRule(installation, RATE);
  return { index, installation, computed, problem: null } as unknown as Stand;
}

/** A stand whose filter is another one, so many times as loud. */
function louder(of: Stand, factor: number): Stand {
  const impulseResponse = of.computed!.impulseResponse.map((value) => value * factor);
  return { ...of, computed: { ...of.computed!, impulseResponse } };
}

/** The levels, and a way to wait until others than those there were are known. */
function levelsBy(lab: LabClient) {
  const told: string[] = [];
  const levels = new Levels(lab, (error) => told.push((error as Error).message));
  const others = (before: unknown) =>
    vi.waitFor(() => expect(levels.loudness).not.toBe(before), { timeout: 20_000, interval: 2 });
  const measured = (wanted: Parameters<typeof levels.measure>[0]): Promise<void> => {
    const before = levels.loudness;
    levels.measure(wanted);
    return others(before);
  };
  return { levels, measured, others, told };
}

test('twice the amplitude is 6.02 dB louder', async () => {
  const { lab } = labAtHand();
  const loop = (await new SoundCache(lab).loop(usualSound('pinkNoise'), null, RATE))!;
  const { levels, measured } = levelsBy(lab);
  const plate = stand(0, 'flat plate');
  const twice = { ...louder(plate, 2), index: 1 };
  expect(levels.difference(twice, plate)).toBeNull();
  await measured({ loop, stands: [plate, twice] });
  close(levels.difference(twice, plate)!, 20 * Math.log10(2), { abs: 1e-3, because: 'rounding to 32 bits' });
  expect(levels.difference(plate, plate)).toBe(0);
});

test('only what is not known is asked for', async () => {
  const { lab, asked } = labAtHand();
  const loop = (await new SoundCache(lab).loop(usualSound('pinkNoise'), null, RATE))!;
  const { measured } = levelsBy(lab);
  const stands = [stand(0, 'free air'), stand(1, 'flat plate')];
  await measured({ loop, stands });
  const before = asked();
  await measured({ loop, stands });
  expect(asked()).toBe(before);
  await measured({ loop, stands: [stands[0], louder(stands[1], 0.5)] });
  expect(asked()).toBe(before + 1);
});

test('wishes that come while one is measured do not queue up: the newest counts', async () => {
  const { lab, asked } = labAtHand();
  const loop = (await new SoundCache(lab).loop(usualSound('pinkNoise'), null, RATE))!;
  const { levels, measured, others } = levelsBy(lab);
  const plate = stand(0, 'flat plate');
  const before = asked();
  levels.measure({ loop, stands: [plate] });
  for (let step = 1; step < 20; step++) levels.measure({ loop, stands: [louder(plate, 1 + step)] });
  await measured({ loop, stands: [louder(plate, 21)] });
  await others(levels.loudness);
  expect(asked() - before).toBe(2);
  const newest = levels.loudness[0]!;
  await measured({ loop, stands: [plate] });
  close(newest - levels.loudness[0]!, 20 * Math.log10(21), { abs: 1e-3, because: 'rounding to 32 bits' });
});

test('a stand that cannot be built has no level', async () => {
  const { lab } = labAtHand();
  const loop = (await new SoundCache(lab).loop(usualSound('pinkNoise'), null, RATE))!;
  const { levels, measured } = levelsBy(lab);
  const [plate, none] = [stand(0, 'flat plate'), { ...stand(1, 'closed box'), computed: null }];
  await measured({ loop, stands: [plate, none] });
  expect(levels.difference(none, plate)).toBeNull();
});

test('after a failure the next wish is measured', async () => {
  const { lab } = labAtHand();
  const loop = (await new SoundCache(lab).loop(usualSound('pinkNoise'), null, RATE))!;
  const { levels, measured, told } = levelsBy(lab);
  const plate = stand(0, 'flat plate');
  const unknown = { loop: { ...loop, key: 'unknown' }, stands: [plate] };
  levels.measure(unknown);
  await vi.waitFor(() => expect(told).toEqual(['no sound is kept under "unknown"']));
  // One that has been replaced since is of no concern.
  levels.measure(unknown);
  await measured({ loop, stands: [plate] });
  expect(told.length).toBe(1);
  expect(levels.loudness[0]).not.toBeNull();
});

test('among some of the stands the quietest of them is what the others are brought down to', async () => {
  const { levels } = levelsBy(labAtHand().lab);
  levels.loudness = [-40, -24, -20, null];
  const [, plate, shell] = [0, 1, 2].map((i) => stand(i, 'flat plate'));
  const db = (factor: number): number => 20 * Math.log10(factor);
  close(db(levels.levelling(shell)), -20, { abs: 1e-9, because: 'the quietest of all' });
  close(db(levels.levelling(shell, [1, 2])), -4, { abs: 1e-9, because: 'the quietest of the two' });
  expect(levels.levelling(plate, [1, 2])).toBe(1);
});
