import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlineArea, outlineLength, outlineWidth } from '../../../../src/lib/acoustics/outline.js';
import {
  BOX_PEAK_READINGS,
  flankVolts,
  HOME_FIGURES,
  homeMeasurement,
  type HomeReadings
} from '../../../../src/lib/acoustics/speaker/home-measurement.js';
import { motorFigures } from '../../../../src/lib/acoustics/speaker/motor-figures.js';
import type { Motor } from '../../../../src/lib/acoustics/speaker/speaker.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { close } from '../../../helpers/close.js';
import { AIR } from '../../../helpers/demo-installations.js';

type Complex = [re: number, im: number];
const over = ([a, b]: Complex, [c, d]: Complex): Complex => {
  const whole = c * c + d * d;
  return [(a * c + b * d) / whole, (b * c - a * d) / whole];
};

/** The impedance of a speaker with some mass on its cone and some stiffness behind it, from its masses and springs. */
function impedance({ mms, cms, bl, re, qms }: Motor, f: number, mass = 0, stiffness = 0): Complex {
  const w = 2 * Math.PI * f;
  const friction = Math.sqrt(mms / cms) / qms;
  const [r, x] = over([bl * bl, 0], [friction, w * (mms + mass) - (1 / cms + stiffness) / w]);
  return [re + r, x];
}

/** Where a function rises to or falls from a value, by halves. */
function crossing(of: (f: number) => number, value: number, [low, high]: [number, number]): number {
  const above = of(high) > value;
  for (let i = 0; i < 60; i++) {
    const middle = Math.sqrt(low * high);
    if (of(middle) > value === above) high = middle;
    else low = middle;
  }
  return Math.sqrt(low * high);
}

const RESISTOR = 47;
const GENERATOR = 1;
const VOLUME = 20e-6;
const MASS = 0.3e-3;

/** What an experimenter reads of this speaker, by nothing but the voltages of a divider. */
function readingsFrom(motor: Motor, cone: number): Required<HomeReadings> {
  const stiffness = (1.204 * 343.2 ** 2 * cone * cone) / VOLUME;
  const peakOf = (mass: number, stiff: number) => {
    const volts = (f: number) => {
      const [a, b] = impedance(motor, f, mass, stiff);
      return (GENERATOR * Math.hypot(a, b)) / Math.hypot(RESISTOR + a, b);
    };
    // The peak is where the voltage of neighbours is equal, and the impedance is real there.
    const w = Math.sqrt((1 / motor.cms + stiff) / (motor.mms + mass));
    const f0 = w / (2 * Math.PI);
    expect(volts(f0)).toBeGreaterThan(Math.max(volts(f0 * 1.001), volts(f0 * 0.999)));
    const speakerVolts = volts(f0);
    const resistorVolts = GENERATOR - speakerVolts;
    const z = (f: number) => Math.hypot(...impedance(motor, f, mass, stiff));
    const target = Math.sqrt(z(f0) * motor.re);
    return {
      ...{ f0, speakerVolts, resistorVolts, volts },
      f1: crossing(z, target, [f0 / 50, f0]),
      f2: crossing(z, target, [f0, f0 * 50])
    };
  };
  const free = peakOf(0, 0);
  const box = peakOf(0, stiffness);
  return {
    ...{
      coil: motor.re,
      resistor: RESISTOR,
      speakerVolts: free.speakerVolts,
      resistorVolts: free.resistorVolts
    },
    ...{ fs: free.f0, f1: free.f1, f2: free.f2, cone, addedMass: MASS, withMass: peakOf(MASS, 0).f0 },
    ...{
      boxVolume: VOLUME,
      inBox: box.f0,
      boxSpeakerVolts: box.speakerVolts,
      boxResistorVolts: box.resistorVolts
    },
    ...{ boxF1: box.f1, boxF2: box.f2 }
  };
}

const withoutBoxPeak = (read: Required<HomeReadings>): HomeReadings =>
  Object.fromEntries(
    Object.entries(read).filter(
      ([key]) => !BOX_PEAK_READINGS.includes(key as (typeof BOX_PEAK_READINGS)[number])
    )
  );
const OVAL = SPEAKERS.oval;
const SD = outlineArea(OVAL.cone);
const READ = readingsFrom(OVAL.motor, SD);

const between = (least: number, most: number) =>
  fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map(Math.exp);

describe('homeMeasurement', () => {
  it('by hand: 40 Ω at the peak over a coil of 8 Ω, 400 Hz between 320 and 500 Hz, 0.5 g bring it to 300 Hz', () => {
    const { figures, unevenness } = homeMeasurement(
      'added',
      {
        ...{ coil: 8, resistor: 100, speakerVolts: 0.4, resistorVolts: 1, fs: 400, f1: 320, f2: 500 },
        ...{ cone: 6e-4, addedMass: 0.5e-3, withMass: 300 }
      },
      {},
      AIR
    );
    close(figures.r0, 5, { rel: 1e-12, because: '100 · 0.4 / 1 / 8' });
    close(figures.qms, 4.969, { rel: 1e-4, because: '400 · √5 / 180' });
    close(figures.qes, 1.2423, { rel: 1e-4, because: '4.969 / 4' });
    close(figures.mms * 1e3, 0.642857, { rel: 1e-6, because: '0.5 / (16/9 − 1)' });
    close(unevenness, 0, { abs: 1e-12, because: '320 · 500 = 400²' });
  });

  for (const [title, method, of] of [
    ['an added mass', 'added', (read: Required<HomeReadings>) => read],
    ['a box and its peak', 'box', (read: Required<HomeReadings>) => read],
    ['a box and its resonance alone', 'box', withoutBoxPeak]
  ] as const)
    it(`made-up readings of any speaker give it back: by ${title}`, () => {
      fc.assert(
        fc.property(
          fc.record({
            mms: between(1e-4, 2e-3),
            cms: between(1e-4, 3e-3),
            bl: between(0.5, 4),
            re: between(3, 40),
            qms: between(1, 8)
          }),
          between(0.5e-4, 2e-3),
          (some, cone) => {
            const motor = { ...some, xmax: 1e-3, ratedPower: 1 };
            const { figures, unevenness } = homeMeasurement(method, of(readingsFrom(motor, cone)), {}, AIR);
            const { fs, qes, qts, vas } = motorFigures(motor, cone, AIR);
            const expected = { ...motor, fs, qes, qts, vas, r0: 1 + motor.qms / qes };
            for (const figure of HOME_FIGURES)
              close(figures[figure], expected[figure], { rel: 1e-6, because: `${figure}: no reading errs` });
            close(unevenness, 0, { abs: 1e-9, because: 'f1 and f2 lie evenly about the resonance' });
          }
        ),
        { numRuns: 60 }
      );
    });

  it('the voltage to look for is the one that the divider has at f1 and f2', () => {
    const wanted = flankVolts(READ);
    for (const f of [READ.f1, READ.f2]) {
      const [a, b] = impedance(OVAL.motor, f);
      close(wanted, (GENERATOR * Math.hypot(a, b)) / Math.hypot(RESISTOR + a, b), {
        rel: 1e-9,
        because: 'by the whole complex impedance'
      });
    }
  });

  it('the error of the moving mass is 2/(1 − r²)·δr/r, r the one resonance over the other (acoustics of the method)', () => {
    const { figures, errors } = homeMeasurement('added', READ, { withMass: 0.01 * READ.withMass }, AIR);
    const r = READ.withMass / READ.fs;
    close(errors.mms / figures.mms, (2 / (1 - r * r)) * 0.01, {
      rel: 1e-4,
      because: 'the derivative by hand'
    });
  });

  /** Reading errors of 1 % each, of the voltages 2 %. */
  const ERRORS = Object.fromEntries(
    Object.entries(READ).map(([key, value]) => [key, value * (key.endsWith('Volts') ? 0.02 : 0.01)])
  ) as Required<HomeReadings>;

  for (const [title, method, read] of [
    ['an added mass', 'added', READ],
    ['a box and its resonance alone', 'box', withoutBoxPeak(READ)]
  ] as const)
    it(`readings thrown by their errors scatter as it says: ${title}`, () => {
      const { errors } = homeMeasurement(method, read, ERRORS, AIR);
      const random = seeded(14);
      const all = Array.from({ length: 4000 }, () => {
        const thrown = Object.fromEntries(
          Object.entries(read).map(([key, value]) => [
            key,
            value + random() * ERRORS[key as keyof HomeReadings]!
          ])
        );
        return homeMeasurement(method, thrown, {}, AIR).figures;
      });
      for (const figure of HOME_FIGURES) {
        const values = all.map((one) => one[figure]);
        const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
        const spread = Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / values.length);
        close(spread, errors[figure], {
          rel: 0.06,
          because: `${figure}: 4000 throws know a spread to 1.1 %; what is bent in the answer adds up to 4 %`
        });
      }
    });

  it('a leak ruins what a box says: 0.1 mm round the oval’s frame make 4 cm³ out of 19, with 0.2 mm it is refused', () => {
    const { motor, frame } = OVAL;
    /** The resonance on 20 cm³ with a slit 1 mm deep round the frame, by a scan of the impedance. */
    const resonanceWith = (gap: number): number => {
      const [depth, length] = [1e-3, 2 * (outlineLength(frame) + outlineWidth(frame))];
      const z = (f: number): number => {
        const w = 2 * Math.PI * f;
        // Viscous flow between planes, low limit (any handbook of acoustics; from memory), beside the spring of the air.
        const slit: Complex = [
          (12 * 1.81e-5 * depth) / (gap ** 3 * length),
          (1.2 * w * 1.204 * depth) / (gap * length)
        ];
        const [g, b] = over([1, 0], slit);
        const [r, x] = over([SD * SD, 0], [g, b + (w * VOLUME) / (1.204 * 343.2 ** 2)]);
        const friction = Math.sqrt(motor.mms / motor.cms) / motor.qms;
        const [re, im] = over([motor.bl ** 2, 0], [friction + r, w * motor.mms - 1 / (w * motor.cms) + x]);
        return Math.hypot(motor.re + re, im);
      };
      const scan = Array.from({ length: 1400 }, (_, i) => 200 + i);
      return scan.reduce((best, f) => (z(f) > z(best) ? f : best));
    };
    const seems = (gap: number) =>
      homeMeasurement('box', { ...withoutBoxPeak(READ), inBox: resonanceWith(gap) }, {}, AIR).figures.vas *
      1e6;
    close(seems(1e-6), 19.5, { abs: 0.1, because: 'tight: the oval’s own, to 1 Hz' });
    close(resonanceWith(1e-4), 383, { abs: 1, because: 'as the docs say' });
    close(seems(1e-4), 4.2, { abs: 0.2, because: 'as the page says, to 1 Hz' });
    expect(() => seems(2e-4)).toThrow('the box must raise the resonance: it leaks, or a reading has slipped');
  });

  it('says what is still to read', () => {
    expect(() =>
      homeMeasurement('added', { coil: 8, fs: 400, f1: 320, f2: 500, cone: 6e-4, withMass: 300 }, {}, AIR)
    ).toThrow('still to read: resistor, volts across the speaker, volts across the resistor, added mass');
  });

  it('refuses readings that cannot be, each in one sentence', () => {
    const refused = (part: HomeReadings, method: 'added' | 'box' = 'added') => {
      try {
        homeMeasurement(method, { ...READ, ...part }, {}, AIR);
      } catch (error) {
        return (error as Error).message;
      }
      return null;
    };
    expect(refused({})).toBe(null);
    expect(refused({ coil: 0 })).toBe('coil by the ohmmeter must be above 0, got 0');
    expect(refused({ f1: -3 })).toBe('tone below it must be above 0, got -3');
    expect(refused({ speakerVolts: 0.01 })).toMatch(
      /^at the resonance the speaker must have more than its coil’s resistance: it reads 0\.\d+ Ω, the coil 7.20 Ω$/
    );
    expect(refused({ f1: 400 })).toBe(
      'the resonance must lie between the tone below it and the tone above it'
    );
    expect(refused({ withMass: READ.fs })).toBe('the added mass must lower the resonance: read both again');
    expect(refused({ inBox: READ.fs }, 'box')).toBe(
      'the box must raise the resonance: it leaks, or a reading has slipped'
    );
    expect(refused({ boxF2: READ.inBox }, 'box')).toBe(
      'the resonance in the box must lie between the tone below it and the tone above it'
    );
    expect(refused({ boxF1: READ.inBox * 0.1, boxF2: READ.inBox * 4 }, 'box')).toMatch(
      /^the box must add stiffness/
    );
  });
});

/** Normally distributed numbers of mean 0 and spread 1 (Box and Muller 1958), the same ones every time. */
function seeded(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
