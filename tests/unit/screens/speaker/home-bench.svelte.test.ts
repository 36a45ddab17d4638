import { expect, test } from 'vitest';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { HomeBench } from '../../../../src/lib/screens/speaker/home-bench.svelte.js';
import { resultsOf, withError } from '../../../../src/lib/screens/speaker/home-fields.js';
import { SpeakerInHand } from '../../../../src/lib/screens/speaker/speaker-in-hand.svelte.js';
import { close } from '../../../helpers/close.js';

function homeBench() {
  const bench = new Bench(demoBench());
  const inHand = new SpeakerInHand(bench);
  return { bench, inHand, home: new HomeBench(inHand) };
}

const READINGS = {
  ...{
    coil: '8',
    resistor: '100',
    fs: '400',
    speakerVolts: '0.2',
    resistorVolts: '0,5',
    f1: '320',
    f2: '500'
  },
  ...{ addedMass: '0.5', withMass: '300' }
} as const;

function readAll(home: HomeBench): void {
  for (const [key, typed] of Object.entries(READINGS))
    expect(home.enter(key as keyof typeof READINGS, typed)).toBe(null);
}

test('readings become a speaker, in one step to undo; its excursion and power stay', () => {
  const { bench, inHand, home } = homeBench();
  readAll(home);
  expect(home.use()).toBe(null);
  const { motor } = inHand.speaker;
  close(motor!.mms * 1e3, 0.642857, { rel: 1e-6, because: '0.5 g/(16/9 − 1)' });
  expect([motor!.re, motor!.xmax, motor!.ratedPower]).toEqual([8, 0.0008, 2]);
  bench.undo();
  expect(inHand.speaker).toEqual(SPEAKERS.oval);
});

test('the voltage to look for is there as soon as the resonance is read, and not before', () => {
  const { home } = homeBench();
  for (const key of ['coil', 'resistor', 'speakerVolts'] as const) home.enter(key, READINGS[key]);
  expect(home.wanted).toBe(null);
  home.enter('resistorVolts', READINGS.resistorVolts);
  // Z/Re = (10 ± j·4·√5)/6, so |100 + Z|² = 100² + 2·100·8·(10/6) + 64·5
  close(home.wanted!, (0.7 * 8 * Math.sqrt(5)) / Math.sqrt(1e4 + (1600 * 10) / 6 + 320), {
    rel: 1e-12,
    because: 'by hand'
  });
  home.enter('speakerVolts', '0.01');
  expect(home.wanted).toBe(null);
});

test('says what is still to read, and why a reading cannot be', () => {
  const { home } = homeBench();
  expect(home.measured).toMatch(/^still to read: coil by the ohmmeter, resistor, /);
  readAll(home);
  home.enter('withMass', '410');
  expect(home.measured).toBe('the added mass must lower the resonance: read both again');
  expect(home.use()).toBe('the added mass must lower the resonance: read both again');
  expect(home.enter('fs', 'low')).toBe('resonance must be a number');
  expect(home.enter('fs', '0')).toBe('resonance must be above 0, got 0');
  expect(home.typed.fs).toBe('400');
  home.enter('fs', '');
  expect(home.measured).toBe('still to read: resonance');
  home.clear();
  expect(home.empty).toBe(true);
});

test('better reading makes smaller errors; a share beyond 50 % is refused', () => {
  const { home } = homeBench();
  readAll(home);
  const errorOf = () => (typeof home.measured === 'string' ? NaN : home.measured.errors.mms);
  const before = errorOf();
  expect(home.setError('tone', '0.1')).toBe(null);
  expect(errorOf()).toBeLessThan(before / 2);
  expect(home.setError('tone', '51')).toBe('an error of reading must be within 0 … 50 %, got 51');
  expect(home.setError('tone', '')).toBe('an error of reading must be within 0 … 50 %, got nothing');
  expect(home.errors.tone).toBe(0.1);
});

test('by a box the readings of the box count', () => {
  const { home } = homeBench();
  readAll(home);
  home.method = 'box';
  expect(home.measured).toBe('still to read: volume of the box, resonance in the box');
  home.enter('boxVolume', '20');
  home.enter('inBox', '560');
  if (typeof home.measured === 'string') throw new Error(home.measured);
  close(home.measured.figures.vas * 1e6, 19.2, { rel: 1e-9, because: '20 cm³ · (1.4² − 1)' });
  expect(resultsOf(home.measured).at(-1)!.name).toBe('equivalent volume');
});

test('a figure has as many places as its error leaves', () => {
  expect(withError(0.6428, 0.0432)).toBe('0.64 ± 0.04');
  expect(withError(4.969, 0.176)).toBe('4.97 ± 0.18');
  expect(withError(399.9, 4)).toBe('400 ± 4');
  expect(withError(348.13, 12.3)).toBe('348 ± 12');
  expect(withError(1234, 210)).toBe('1230 ± 210');
  expect(withError(1.6, 0)).toBe('1.6');
});
