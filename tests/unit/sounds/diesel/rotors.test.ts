import { expect, test } from 'vitest';
import { bandLevels } from '../../../../src/lib/listening/band-levels.js';
import { powerSpectrum } from '../../../../src/lib/listening/power-spectrum.js';
import { usualValues } from '../../../../src/lib/sounds/knob.js';
import { addCharger, turboSpeed, turnsOfTurbo } from '../../../../src/lib/sounds/diesel/chargers.js';
import { type Diesel, DIESEL_KNOBS } from '../../../../src/lib/sounds/diesel/diesel.js';
import { DIESEL_SOURCE } from '../../../../src/lib/sounds/diesel/diesel-source.js';
import { addFans, addHum, bladeOrder } from '../../../../src/lib/sounds/diesel/rotors.js';
import { slowNoise } from '../../../../src/lib/sounds/diesel/slow-noise.js';
import { settledAt, ticked } from '../../../../src/lib/sounds/motion/motion.js';
import { advanced } from '../../../helpers/advanced.js';
import { courseThrough } from '../../../../src/lib/sounds/motion/course.js';
import { lineOf, steady } from './steady.js';

const RATE = 16000;
const USUAL: Diesel = { kind: 'diesel', name: 'any', ...usualValues(DIESEL_KNOBS), fans: 1, hum: 1 };
const { course, span } = steady({ speed: 12, effort: 0.8, turns: 48 }, RATE);
const slow = slowNoise(span);

/** By how many dB a band of some hertz stands above bands of that width at either side of it. */
function stands(signal: Float32Array, frequency: number, width = 8): number {
  const { power, binWidth } = powerSpectrum(signal, RATE);
  const bands = [-3, 0, 3].map((n) => ({
    lower: frequency + (n - 0.5) * width,
    upper: frequency + (n + 0.5) * width
  }));
  const [below, here, above] = bandLevels(power, binWidth, bands);
  return here - Math.max(below, above);
}

test('the turbocharger whines at half of its blades, seven a turn, and at all fourteen', () => {
  const signal = new Float32Array(span.length);
  addCharger(signal, USUAL, course, span, slow);
  const turns = turboSpeed(USUAL, 0.8);
  expect(stands(signal, 7 * turns, 30)).toBeGreaterThan(6);
  expect(stands(signal, 14 * turns, 60)).toBeGreaterThan(6);
  expect(stands(signal, 10 * turns, 30)).toBeLessThan(3);
});

test('the turns of a turbocharger are whole in a loop, end at 0 before one, and never jump along a ride', () => {
  const round = turnsOfTurbo(USUAL, course, span);
  const all = round[round.length - 1];
  expect(all).toBeCloseTo(Math.round(all), 9);
  expect(Math.abs(all / (4 * turboSpeed(USUAL, 0.8)) - 1)).toBeLessThan(1e-3);

  const full = DIESEL_SOURCE.target({ ...USUAL, notch: 8 });
  const dynamics = DIESEL_SOURCE.dynamics(USUAL);
  const motions = [advanced(settledAt(DIESEL_SOURCE.target({ ...USUAL, notch: 0 })), full, dynamics, 0.3)];
  for (let i = 0; i < 3000; i++) motions.push(ticked(motions[i], full, dynamics));
  const ride = turnsOfTurbo(USUAL, courseThrough(motions, RATE), { ...span, cyclic: false });
  expect(ride[ride.length - 1]).toBe(0);
  for (let i = 1; i < ride.length; i++)
    expect(ride[i] - ride[i - 1]).toBeCloseTo(turboSpeed(USUAL, motions[i].spool) / 1000, 3);
});

test('the blower gulps twelve times a turn of the crank, its gear has 53 teeth; without a charger nothing is heard', () => {
  const signal = new Float32Array(span.length);
  addCharger(signal, { ...USUAL, charging: 'blower' }, course, span, slow);
  expect(stands(signal, 12 * 12)).toBeGreaterThan(10);
  expect(stands(signal, 24 * 12)).toBeGreaterThan(10);
  expect(stands(signal, 53 * 12)).toBeGreaterThan(4);
  const none = new Float32Array(span.length);
  addCharger(none, { ...USUAL, charging: 'none' }, course, span, slow);
  expect(none.every((x) => x === 0)).toBe(true);
});

test('the fans beat with their blades, the hum with the poles; turned down they are gone', () => {
  const fans = new Float32Array(span.length);
  addFans(fans, USUAL, course, span, slow);
  expect(stands(fans, bladeOrder(USUAL, 0) * 12)).toBeGreaterThan(6);
  // A two-stroke engine's fans lie twice as far apart, and here far enough.
  const fast = steady({ speed: 45, turns: 180 }, RATE);
  const beats = new Float32Array(fast.span.length);
  const twoStroke: Diesel = { ...USUAL, cycle: 'two-stroke' };
  addFans(beats, twoStroke, fast.course, fast.span, slowNoise(fast.span));
  expect(stands(beats, bladeOrder(twoStroke, 1) * 45)).toBeGreaterThan(3);
  const hum = new Float32Array(span.length);
  addHum(hum, USUAL, course, span);
  for (const order of [10, 15, 30, 60]) expect(lineOf(hum, order * 48)).toBeGreaterThan(0.02);
  expect(lineOf(hum, 20 * 48)).toBeLessThan(1e-3);
  const still = new Float32Array(span.length);
  addFans(still, { ...USUAL, fans: 0 }, course, span, slow);
  addHum(still, { ...USUAL, hum: 0 }, course, span);
  expect(still.every((x) => x === 0)).toBe(true);
});

test('the blades of both fans pass a whole number of times in every pattern, the louder fan a time more', () => {
  for (const fullRpm of [600, 735, 800, 860, 900, 980, 1050, 1800])
    for (const [cycle, turns] of [
      ['four-stroke', 2],
      ['two-stroke', 1]
    ] as const) {
      const [louder, other] = ([0, 1] as const).map(
        (fan) => turns * bladeOrder({ ...USUAL, cycle, fullRpm }, fan)
      );
      expect(Number.isInteger(other)).toBe(true);
      expect(louder).toBe(other + 1);
      // Of the roster's medium-speed engines: eight or nine blades at about twice their speed.
      if (fullRpm >= 860 && fullRpm <= 980)
        for (const order of [louder / turns, other / turns])
          expect([8, 9].some((blades) => order / blades > 1.8 && order / blades < 2.1)).toBe(true);
    }
});
