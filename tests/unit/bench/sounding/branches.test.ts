import { expect, test } from 'vitest';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { Branches } from '../../../../src/lib/bench/sounding/branches.svelte.js';
import type { Hearing } from '../../../../src/lib/bench/sounding/hearing.svelte.js';
import type { Room } from '../../../../src/lib/bench/sounding/playback.svelte.js';
import { reachOfBench } from '../../../../src/lib/bench/sounding/reach-of-bench.js';
import { DEMO_MOUNTS, demoBench } from '../../../../src/lib/file/demo-bench.js';
import { close } from '../../../helpers/close.js';

/** One plate with the usual speaker and the same with half its force factor, and what the room was given of them. */
function twoMagnets(hearing: Pick<Hearing, 'among' | 'levelled'> = { among: null, levelled: true }) {
  const demo = demoBench();
  const { oval } = SPEAKERS;
  const weak = { ...oval, motor: { ...oval.motor, bl: oval.motor.bl / 2 } };
  const setups = ['weak', 'oval'].map((speaker) => ({
    ...demo.setups[1],
    speaker,
    mount: DEMO_MOUNTS.plate
  }));
  const bench = new Bench({ ...demo, speakers: { oval, weak }, setups });
  const given: Float32Array[] = [];
  const room = {
    setBranch: (index: number, filter: Float32Array) => (given[index] = filter)
  } as unknown as Room;
  const branches = new Branches({
    bench,
    // The first is to be brought down to a quarter among the two.
    levels: { levelling: ({ index }, among) => (among && index === 0 ? 0.25 : 1) },
    hearing,
    gain: { hasRoomFor: () => true },
    playback: { room }
  });
  const loaded = (): Float32Array[] => {
    branches.load(bench.stands);
    return given.slice();
  };
  return { bench, loaded };
}

test('at the same drive the weaker magnet plays softer, and nothing gets louder when another mount is measured against', () => {
  const { bench, loaded } = twoMagnets();
  bench.measureAgainst(1);
  const [weak, strong] = loaded();
  expect(strong).toEqual(bench.stands[1].computed!.impulseResponse);
  const first = (filter: Float32Array) =>
    filter.reduce((most, x) => (Math.abs(x) > Math.abs(most) ? x : most));
  close(first(weak) / first(strong), 0.5, {
    abs: 0.02,
    because: 'the first sample is the mid band; its resonance, less damped, comes after'
  });
  bench.measureAgainst(0);
  expect(bench.stands[1].computed!.answer.drive).toBeCloseTo(2, 12);
  loaded().forEach((filter, i) =>
    filter.forEach((x, k) =>
      close(x, [weak, strong][i][k], { abs: 1e-7, because: 'rounding to 32 bits of what is below 1' })
    )
  );
});

test('room is made for what is played: the most sensitive speaker as if it were alone, the others below', async () => {
  const { bench } = twoMagnets();
  const drives = async () => {
    const reach = reachOfBench(bench, null, 'rule');
    return [await Promise.all(reach.installations.map(reach.answer)), reach.where] as const;
  };
  bench.measureAgainst(0);
  const [answers, where] = await drives();
  expect(answers.map(({ drive }) => drive)).toEqual([0.5, 1]);
  bench.measureAgainst(1);
  expect((await drives())[1]).toEqual(where);
});

test('who listens blind hears all at one loudness, or at the same drive where that was chosen', () => {
  const [driven] = twoMagnets({ among: [0, 1], levelled: false }).loaded();
  const [levelled] = twoMagnets({ among: [0, 1], levelled: true }).loaded();
  expect(driven).toEqual(twoMagnets().loaded()[0]);
  levelled.forEach((x, i) => close(x, driven[i] / 4, { abs: 1e-8, because: 'rounding to 32 bits' }));
});
