import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { RealFft } from '../../src/lib/numeric/fft.js';
import { type Electric, ELECTRIC_KNOBS, periodsPerTurn } from '../../src/lib/sounds/electric/electric.js';
import { ELECTRIC_SOURCE } from '../../src/lib/sounds/electric/electric-source.js';
import { usualValues } from '../../src/lib/sounds/knob.js';
import { type Motion, settledAt, ticked } from '../../src/lib/sounds/motion/motion.js';
import { renderLoop, renderRide } from '../../src/lib/sounds/motion/ride.js';
import { close } from '../helpers/close.js';
import { lineAmplitude, strongestLine } from '../helpers/spectral-line.js';

const RATE = 16000;
const SILENT: Electric = {
  ...usualValues(ELECTRIC_KNOBS),
  kind: 'electric',
  name: 'one part at a time',
  inverter: 0,
  blowers: 0,
  hum: 0,
  gears: 0
};

// Iron is magnetised both ways in each period of the line (common practice: transformers hum at twice the line frequency).
describe.each([
  ['16.7 Hz', 16.7],
  ['50 Hz', 50],
  ['60 Hz', 60]
] as const)('a line of %s', (lineFrequency, hertz) => {
  test('hums at twice its frequency and its multiples', () => {
    const loop = renderLoop(ELECTRIC_SOURCE, { ...SILENT, lineFrequency, hum: 1 }, RATE);
    for (const harmonic of [1, 2, 3]) {
      const exact = 2 * hertz * harmonic;
      const found = strongestLine(loop, RATE, exact - 0.4 * hertz, exact + 0.4 * hertz);
      close(found.frequency, exact, { rel: 0.001, because: 'asked for' });
      const beside = lineAmplitude(loop, RATE, exact + hertz);
      expect(found.amplitude).toBeGreaterThan(20 * beside);
    }
  });

  test('hums within half a period of a loop of the same when it runs', () => {
    const loop = renderLoop(ELECTRIC_SOURCE, { ...SILENT, lineFrequency, hum: 1, notch: 5 }, RATE);
    const exact = 4 * hertz;
    const found = strongestLine(loop, RATE, exact * 0.9, exact * 1.1);
    close(found.frequency, exact, {
      abs: (2 * 0.51 * RATE) / loop.length,
      because: 'the fundamental has a whole number of periods in the loop, this is twice as many'
    });
  });
});

// Teeth that meet in a second, kinematics: teeth of the axle's gear times turns of the axle.
test.each([
  ['85 teeth, 0.92 m wheels, 16.65 m/s', { wheelDiameter: 0.92, topSpeed: 33.3, gearRatio: 5 }, 85, 16.65],
  ['34 teeth, 1.25 m wheels, 20 m/s', { wheelDiameter: 1.25, topSpeed: 40, gearRatio: 2 }, 34, 20],
  ['102 teeth, 0.8 m wheels, 5 m/s', { wheelDiameter: 0.8, topSpeed: 10, gearRatio: 6 }, 102, 5]
])('gears of %s', (_, knobs, teeth, speed) => {
  const loop = renderLoop(ELECTRIC_SOURCE, { ...SILENT, ...knobs, gears: 1, notch: 4 }, RATE);
  const exact = (teeth * speed) / (Math.PI * knobs.wheelDiameter);
  const found = strongestLine(loop, RATE, 0.8 * exact, 1.2 * exact);
  close(found.frequency, exact, { rel: 0.005, because: 'asked for' });
});

/**
 * The radial force of a motor, from nothing but switches: three legs switch where their sine crosses a triangle (natural
 * sampling: D. G. Holmes and T. A. Lipo, Pulse Width Modulation for Power Converters, 2003, ch. 3), the flux is the voltage's
 * integral, what all phases share drives none, and the force goes with its square (Maxwell's stress).
 *
 * @param motor periods of the motor's frequency in the record, the carrier's likewise; 0 for six steps a period
 * @returns the force's amplitude at so many periods, against the strongest of all but its mean
 */
function radialForce(motor: number, carrier: number): (periods: number) => number {
  const size = 2 ** 14;
  const flux = [0, 1, 2].map((leg) => {
    let sum = 0;
    const integral = Float64Array.from({ length: size }, (_, i) => {
      const t = (i + 0.5) / size;
      const sine = Math.sin(2 * Math.PI * (motor * t - leg / 3));
      const triangle = carrier ? 4 * Math.abs(((carrier * t) % 1) - 0.5) - 1 : 0;
      return (sum += 0.8 * sine > triangle ? 1 : -1);
    });
    const mean = integral.reduce((all, x) => all + x, 0) / size;
    return integral.map((x) => x - mean);
  });
  const [a, b, c] = flux;
  const { re, im } = new RealFft(size).forward(a.map((x, i) => (2 * x - b[i] - c[i]) ** 2));
  const amplitudes = re.map((x, k) => Math.hypot(x, im[k]));
  const strongest = Math.max(...amplitudes.subarray(1));
  return (periods) => amplitudes[periods] / strongest;
}

/** Lines of it, m·carrier + n·motor: those that stand out beside the motors' own, and those of the modulated voltage. */
const FORCE = [
  [1, -1],
  [1, 1],
  [1, -3],
  [1, 3],
  [2, -2],
  [2, 2],
  [3, -1],
  [3, 1],
  [4, -2],
  [4, 2]
];
const VOLTAGE = [
  [1, 0],
  [1, -2],
  [1, 2],
  [2, -1],
  [2, 1],
  [3, -2],
  [3, 2],
  [4, -1],
  [4, 1]
];
const SIX_STEP = [2, 4, 6, 8, 10, 12];

describe('the flux squared', () => {
  test('has carrier ± motor, 2·carrier ± 2·motor and their like, and nothing where the voltage has lines', () => {
    const [motor, carrier] = [41, 997];
    const force = radialForce(motor, carrier);
    expect(force(2 * motor)).toBe(1);
    for (const [m, n] of FORCE) expect(force(m * carrier + n * motor), `${m}, ${n}`).toBeGreaterThan(1e-3);
    for (const [m, n] of VOLTAGE) expect(force(m * carrier + n * motor), `${m}, ${n}`).toBeLessThan(5e-4);
    // The four that are meant by name are the strongest of each carrier.
    for (const m of [1, 2])
      for (const n of [-4, -3, -2, -1, 0, 1, 2, 3, 4])
        expect(force(m * carrier + m * motor)).toBeGreaterThan(0.8 * force(m * carrier + n * motor));
  });

  test('of six steps has even multiples of the motor, 6 and 12 among them', () => {
    const force = radialForce(41, 0);
    for (const n of SIX_STEP) expect(force(n * 41)).toBeGreaterThan(1e-3);
    for (const n of [1, 3, 5, 7, 9, 11, 13]) expect(force(n * 41)).toBeLessThan(1e-4);
  });
});

describe.each([
  ['a fixed carrier', 2, 20.5],
  ['a locked carrier', 4, 47.1],
  ['six steps', 8, 180]
] as const)('the inverter with %s', (way, notch, motor) => {
  const still: Electric = { ...SILENT, inverter: 1, notch };
  const perTurn = periodsPerTurn(still);
  // The top speed that has the motors run at this frequency.
  const sound = { ...still, topSpeed: (8 / notch) * (motor / perTurn) * Math.PI * still.wheelDiameter };
  const loop = renderLoop(ELECTRIC_SOURCE, sound, RATE);
  const at = (frequency: number) =>
    Math.max(...[-0.2, 0, 0.2].map((off) => lineAmplitude(loop, RATE, frequency + off)));
  const carrier = { 'a fixed carrier': 800, 'a locked carrier': 15 * motor, 'six steps': 0 }[way];

  test('is heard where the flux squared has lines, and not where the voltage has them', () => {
    const [lines, none] = carrier
      ? [FORCE, VOLTAGE].map((all) => all.map(([m, n]) => m * carrier + n * motor))
      : [SIX_STEP, [1, 3, 5, 7, 11, 13]].map((all) => all.map((n) => n * motor));
    const weakest = Math.min(...lines.map(at));
    expect(weakest).toBeGreaterThan(1e-4);
    for (const frequency of none) expect(at(frequency), `${frequency} Hz`).toBeLessThan(weakest / 5);
  });
});

/** What docs/models/electric-sound.md says of the steps: up to which frequency of the motors, with which carrier. */
const STEPS = [
  { upTo: 4, carrier: 400, multiple: 0 },
  { upTo: 8, carrier: 475, multiple: 0 },
  { upTo: 13, carrier: 565, multiple: 0 },
  { upTo: 19, carrier: 672, multiple: 0 },
  { upTo: 27, carrier: 800, multiple: 0 },
  { upTo: 40, carrier: 0, multiple: 21 },
  { upTo: 58, carrier: 0, multiple: 15 },
  { upTo: 82, carrier: 0, multiple: 9 },
  { upTo: 112, carrier: 0, multiple: 5 },
  { upTo: 150, carrier: 0, multiple: 3 },
  { upTo: Infinity, carrier: 0, multiple: 1 }
];

test('the steps of the inverter are those that its page names', () => {
  const page = readFileSync(path.join(import.meta.dirname, '../../docs/models/electric-sound.md'), 'utf8');
  const words = page.replaceAll(/\s+/g, ' ');
  const of = (kind: 'carrier' | 'multiple') => STEPS.filter((step) => step[kind] > 0);
  const list = (numbers: number[], and = ' and ') =>
    `${numbers.slice(0, -1).join(', ')}${and}${numbers.at(-1)}`;
  const fixed = of('carrier');
  const locked = of('multiple').slice(0, -1);
  expect(words).toContain(
    `rises in steps (${list(
      fixed.map(({ carrier }) => carrier),
      ', '
    )} Hz, changing at ${list(fixed.slice(0, -1).map(({ upTo }) => upTo))} Hz of the motors)`
  );
  expect(words).toContain(`then from ${fixed.at(-1)!.upTo} Hz on it is locked to`);
  expect(words).toContain(
    `${list(
      locked.map(({ multiple }) => multiple),
      ', '
    )} times the motors' frequency and at last to 1 (changing at ${list(locked.map(({ upTo }) => upTo))} Hz)`
  );
});

// That an inverter starts with fixed carriers, then locks them to fewer and fewer multiples: common practice.
describe('the inverter of a starting train', () => {
  const sound: Electric = { ...SILENT, inverter: 1, notch: 8 };
  const from = settledAt(ELECTRIC_SOURCE.target({ ...sound, notch: 0 }));
  const { samples } = renderRide(ELECTRIC_SOURCE, sound, from, RATE);
  const perTurn = periodsPerTurn(sound);
  const motions: Motion[] = [from];
  while (motions.length < 13000)
    motions.push(ticked(motions.at(-1)!, ELECTRIC_SOURCE.target(sound), ELECTRIC_SOURCE.dynamics(sound)));

  /** Strength of the line carrier·m + motor·n of a way of switching, in a tenth of a second around a tick. */
  const strength = (step: number, tick: number, m: number, n: number) => {
    const { carrier, multiple } = STEPS[step];
    let [re, im] = [0, 0];
    for (let i = Math.round((tick - 50) * 0.001 * RATE); i < (tick + 50) * 0.001 * RATE; i++) {
      const t = i / RATE / 0.001;
      const k = Math.floor(t);
      const turns = motions[k].turns + (t - k) * (motions[k + 1].turns - motions[k].turns);
      const periods = (m * carrier * i) / RATE + (m * multiple + n) * perTurn * turns;
      const window = 1 + Math.cos((Math.PI * (t - tick)) / 50);
      re += window * samples[i] * Math.cos(2 * Math.PI * periods);
      im += window * samples[i] * Math.sin(2 * Math.PI * periods);
    }
    return Math.hypot(re, im);
  };
  const used = STEPS.map((_, step) => step).filter(
    (step) => step > 0 && STEPS[step - 1].upTo < 0.95 * perTurn * ELECTRIC_SOURCE.target(sound).speed
  );

  test('goes through fixed carriers and locked ones', () => {
    expect(used.filter((step) => STEPS[step].carrier > 0).length).toBeGreaterThanOrEqual(3);
    expect(used.filter((step) => STEPS[step].multiple > 0).length).toBeGreaterThanOrEqual(3);
  });

  test.each(used.map((step) => [step]))('step %i sounds where it should and no other', (step) => {
    const low = STEPS[step - 1].upTo;
    const high = Math.min(STEPS[step].upTo, perTurn * ELECTRIC_SOURCE.target(sound).speed);
    const tick = motions.findIndex(({ speed }) => perTurn * speed > low + 0.6 * (high - low));
    const { multiple } = STEPS[step];
    const [m, n] = multiple === 1 ? [0, 6] : [2, 2];
    const own = strength(step, tick, m, n);
    for (const other of [step - 1, step + 1]) {
      if (!STEPS[other] || STEPS[other].multiple === 1) continue;
      // Lines of two ways of switching may fall together: one is looked for that this step does not have.
      const now = perTurn * motions[tick].speed;
      const at = ({ carrier, multiple: locked }: (typeof STEPS)[number], [k, l]: number[]) =>
        k * (carrier + locked * now) + l * now;
      const here = multiple === 1 ? SIX_STEP.map((l) => l * now) : FORCE.map((line) => at(STEPS[step], line));
      const absent = FORCE.slice(0, 6).find((line) =>
        [2 * now, ...here].every((own) => Math.abs(at(STEPS[other], line) - own) > 30)
      );
      expect(absent).toBeDefined();
      const [k, l] = absent!;
      expect(own).toBeGreaterThan(5 * strength(other, tick, k, l));
    }
  });

  test('rises step by step while the carriers are fixed, and jumps down where a locked one changes', () => {
    const fixed = STEPS.filter(({ carrier }) => carrier > 0).map(({ carrier }) => carrier);
    expect(fixed).toEqual([...fixed].sort((a, b) => a - b));
    const locked = STEPS.filter(({ multiple }) => multiple > 0);
    for (let i = 1; i < locked.length; i++) {
      expect(locked[i].multiple).toBeLessThan(locked[i - 1].multiple);
      expect(locked[i].multiple % 2).toBe(1);
    }
  });
});
