import { expect, test } from 'vitest';
import { usualValues } from '../../../../src/lib/sounds/knob.js';
import { cylindersOf } from '../../../../src/lib/sounds/diesel/cylinders.js';
import { type Diesel, DIESEL_KNOBS } from '../../../../src/lib/sounds/diesel/diesel.js';

const USUAL: Diesel = { kind: 'diesel', name: 'any', ...usualValues(DIESEL_KNOBS) };
const COUNTS = Array.from({ length: 20 }, (_, i) => i + 1);

test('an engine in line has one bank; in a vee the firings go from bank to bank', () => {
  for (const cylinders of COUNTS) {
    const inLine = cylindersOf({ ...USUAL, cylinders, layout: 'in-line' });
    expect(inLine.map(({ bank }) => bank)).toEqual(inLine.map(() => 0));
    const vee = cylindersOf({ ...USUAL, cylinders, layout: 'vee' });
    expect(vee.map(({ bank }) => bank)).toEqual(vee.map((_, i) => i % 2));
  }
});

test('every place along a bank is taken by one cylinder, and neighbours seldom follow each other', () => {
  for (const layout of ['in-line', 'vee'] as const)
    for (const cylinders of COUNTS) {
      const all = cylindersOf({ ...USUAL, cylinders, layout });
      for (const bank of [0, 1]) {
        const inBank = layout === 'vee' ? Math.ceil(cylinders / 2) : cylinders;
        const places = all.filter((one) => one.bank === bank).map(({ place }) => place * inBank);
        expect(new Set(places).size).toBe(places.length);
        if (places.length < 5) continue;
        const leaps = places.slice(1).map((place, i) => Math.abs(place - places[i]));
        expect(Math.min(...leaps)).toBeGreaterThan(1.5);
      }
    }
});

test('the way to the collector is longest at the ends of the bank, and longer in a large engine', () => {
  const all = cylindersOf({ ...USUAL, cylinders: 8, layout: 'in-line', fullRpm: 1000 });
  const byPlace = [...all].sort((a, b) => a.place - b.place).map(({ runner }) => runner);
  expect(byPlace[0]).toBeCloseTo(byPlace[7], 12);
  expect(byPlace[0]).toBeCloseTo((3.5 * 0.3) / 520, 9);
  expect(byPlace[3]).toBeCloseTo((0.5 * 0.3) / 520, 9);
  const small = cylindersOf({ ...USUAL, cylinders: 8, layout: 'in-line', fullRpm: 2000 });
  expect(small[0].runner).toBeLessThan(all[0].runner);
});

test('what belongs to a cylinder follows from the seed, not from notch, speed or load', () => {
  const one = cylindersOf({ ...USUAL, notch: 0 });
  expect(cylindersOf({ ...USUAL, notch: 8, load: 0.1, unevenness: 1 })).toEqual(one);
  expect(cylindersOf({ ...USUAL, seed: 42 })).not.toEqual(one);
});
