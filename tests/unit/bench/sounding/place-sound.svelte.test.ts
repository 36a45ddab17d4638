import { expect, test } from 'vitest';
import { withNoise } from '../../../../src/lib/bench/circumstances.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { settled, soundingAtHand } from './sounding-at-hand.svelte.js';

const HALL = { place: 'exhibitionHall', levelDb: 74, heard: true } as const;
/** Longer than the noise waits for the bench to become softer. */
const rested = async (): Promise<void> => {
  await settled();
  await new Promise((resolve) => setTimeout(resolve, 500));
  await settled();
};

function atHand() {
  const demo = demoBench();
  const hand = soundingAtHand({ file: { ...demo, view: { ...demo.view, model: 'rule' } } });
  const levels = (): number[] =>
    hand.deeds.filter((deed) => deed.startsWith('noise level')).map((deed) => Number(deed.split(' ')[2]));
  const gains = (): number[] =>
    hand.deeds.filter((deed) => deed.startsWith('gain')).map((deed) => Number(deed.split(' ')[1]));
  return { ...hand, levels, gains };
}

test('without a place nothing is rendered or heard', async () => {
  const { sounding, asked, levels } = atHand();
  await sounding.play();
  await rested();
  expect(asked.some(({ kind }) => kind === 'place')).toBe(false);
  expect(levels()).toEqual([]);
});

test('the bench makes room before the noise is heard, and both together stay below full scale', async () => {
  const { sounding, bench, deeds, levels, gains } = atHand();
  await sounding.play();
  await rested();
  const alone = gains().at(-1)!;
  bench.revise((file) => withNoise(file, HALL));
  await rested();
  const [level] = levels();
  const softer = gains().at(-1)!;
  expect(softer).toBeLessThan(alone);
  expect(deeds.lastIndexOf(`gain ${softer} undefined`)).toBeLessThan(
    deeds.findIndex((deed) => deed.startsWith('noise level'))
  );
  // Peaks of the fake worker: 1 of the loop, 1 of the horn, 0.1 of the noise.
  expect(softer * (2 + 0.1 * level)).toBeLessThanOrEqual(0.85 + 1e-9);
});

test('10 dB more in the place are 10 dB more of noise; where it is not to be heard, there is none at once', async () => {
  const { sounding, bench, levels } = atHand();
  await sounding.play();
  bench.revise((file) => withNoise(file, { ...HALL, levelDb: 50 }));
  await rested();
  bench.revise((file) => withNoise(file, { ...HALL, levelDb: 60 }));
  await rested();
  const [first, second] = levels().slice(-2);
  expect(20 * Math.log10(second / first)).toBeCloseTo(10, 6);
  bench.revise((file) => withNoise(file, { ...HALL, heard: false }));
  await settled();
  expect(levels().at(-1)).toBe(0);
  bench.revise((file) => withNoise(file, null));
  expect(bench.file.noise).toBeUndefined();
});

test('a level that no place has is refused in a sentence', () => {
  const { bench } = atHand();
  expect(bench.revise((file) => withNoise(file, { ...HALL, levelDb: 120 }))).toBe(
    'level of the place must be within 10 … 100 dBA, got 120'
  );
  expect(bench.file.noise).toBeUndefined();
});
