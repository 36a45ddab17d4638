import { expect, test } from 'vitest';
import {
  bandsAtListener,
  bandsInPlace,
  heardFrom,
  heardShare,
  JUDGED
} from '../../../src/lib/evaluation/in-place.js';
import {
  type InPlace,
  noiseGain,
  noiseLevelDb,
  noiseLevels,
  NOISY
} from '../../../src/lib/evaluation/place-noise.js';
import { soundLevelDb } from '../../../src/lib/evaluation/sound-level.js';
import { aWeightedLevel } from '../../../src/lib/listening/a-weighting.js';
import { bandLevels } from '../../../src/lib/listening/band-levels.js';
import { hearingThresholdDb } from '../../../src/lib/listening/hearing-threshold.js';
import { measureSound } from '../../../src/lib/listening/measure-sound.js';
import { RealFft } from '../../../src/lib/numeric/fft.js';
import { LoopFilter } from '../../../src/lib/numeric/filter-with.js';
import { PLACE_NOISES } from '../../../src/lib/sounds/places/place-spectra.js';
import { renderPlaceNoise } from '../../../src/lib/sounds/places/render-place-noise.js';
import { renderPinkNoise } from '../../../src/lib/sounds/test-signals/pink-noise.js';
import { computedByRule } from '../../helpers/by-rule.js';
import { close } from '../../helpers/close.js';
import { DEMO } from '../../helpers/demo-installations.js';

const RATE = 48_000;
const HALL: InPlace = { kind: 'exhibitionHall', levelDb: 74 };
const meanSquare = (samples: Float32Array): number =>
  samples.reduce((sum, x) => sum + x * x, 0) / samples.length;
const db = (power: number): number => 10 * Math.log10(power);

test.each(PLACE_NOISES)(
  'the noise of the $name, as it is played beside a mount, has its dBA against the mount’s level',
  ({ kind }) => {
    const loop = renderPinkNoise(5, RATE, 1);
    const figures = measureSound(loop, RATE);
    const plate = computedByRule(DEMO['flat plate']);
    const [zero, place] = [88, { kind, levelDb: 61 }];
    // What the device is given of both.
    const mountDb = db(
      meanSquare(new LoopFilter(loop, plate.impulseResponse.length).through(plate.impulseResponse))
    );
    const noise = renderPlaceNoise(kind, RATE);
    const gain = noiseGain(noiseLevelDb(place), zero, meanSquare(loop), 1);
    const { re, im } = new RealFft(noise.length).forward(noise);
    const power = Float64Array.from(
      re,
      (x, k) => (2 * gain * gain * (x * x + im[k] * im[k])) / noise.length ** 2
    );
    const pascals = soundLevelDb(plate.answer, figures, zero) - mountDb;
    const levels = bandLevels(power, RATE / noise.length, NOISY).map((level) => level + pascals);
    close(aWeightedLevel(NOISY, levels), 61, { abs: 0.5, because: 'half a decibel is what is promised' });
    levels.forEach((level, i) =>
      close(level, noiseLevels(place)[i], { abs: 0.5, because: 'half a decibel is what is promised' })
    );
  }
);

test('of two speakers the noise is told against the one that levels are written against', () => {
  // The most sensitive of them, 6 dB more, plays as if it were alone: what 0 dB is plays 6 dB softer, and so must the noise.
  close(noiseGain(60, 80, 0.01, 2) / noiseGain(60, 80, 0.01, 1), 0.5, { rel: 1e-12, because: 'rounding' });
});

test('all third octaves together have the level of the sound at the listener', () => {
  const figures = measureSound(renderPinkNoise(5, RATE, 1), RATE);
  const { answer } = computedByRule(DEMO['flat plate']);
  const bands = bandsAtListener(answer, figures, 88);
  const sum = db(bands.reduce((all, { levelDb }) => all + 10 ** (levelDb / 10), 0));
  close(sum, soundLevelDb(answer, figures, 88), {
    abs: 0.8,
    because:
      'pink noise has 6 of its 30 third octaves outside of those judged, of which the plate lets the upper two through'
  });
  expect(bands.every(({ part }) => part)).toBe(true);
});

test('in silence what is above the threshold of hearing is heard; a louder place leaves less, never more', () => {
  const figures = measureSound(renderPinkNoise(5, RATE, 1), RATE);
  const { answer } = computedByRule(DEMO['flat plate']);
  const bands = bandsAtListener(answer, figures, 70);
  JUDGED.forEach(({ centre }, i) => expect(heardFrom(null)[i]).toBe(hearingThresholdDb(centre)));
  let before = heardShare(bandsInPlace(bands, null)).heard;
  expect(before).toBeGreaterThan(15);
  for (let levelDb = 20; levelDb <= 100; levelDb += 5) {
    const { heard } = heardShare(bandsInPlace(bands, { ...HALL, levelDb }));
    expect(heard).toBeLessThanOrEqual(before);
    before = heard;
  }
  expect(before).toBe(0);
});

test('what the sound has not itself is no part of it, however quiet the place', () => {
  const tone = Float32Array.from({ length: RATE }, (_, i) => 0.1 * Math.sin((2 * Math.PI * 1000 * i) / RATE));
  const { answer } = computedByRule(DEMO['flat plate']);
  const bands = bandsInPlace(bandsAtListener(answer, measureSound(tone, RATE), 90), null);
  expect(bands.filter(({ part }) => part).map(({ band }) => band.nominal)).toEqual([1000]);
  expect(heardShare(bands)).toEqual({ heard: 1, all: 1 });
});
