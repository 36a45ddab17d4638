import { describe, expect, it, test } from 'vitest';
import type { Installation } from '../../../src/lib/acoustics/installation.js';
import type { Lift } from '../../../src/lib/acoustics/speaker/lift.js';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { ruleAnswer } from '../../../src/lib/evaluation/answer.js';
import {
  impedanceCurve,
  limitsOf,
  strainFilters,
  type Strained
} from '../../../src/lib/evaluation/limits.js';
import { strain } from '../../../src/lib/listening/strain.js';
import { LoopFilter } from '../../../src/lib/numeric/filter-with.js';
import { close } from '../../helpers/close.js';
import { DEMO, IN_FRONT } from '../../helpers/demo-installations.js';

const AIR = { temperatureC: 20 };
const RATE = 48000;
const { motor } = SPEAKERS.oval;
const FS = 1 / (2 * Math.PI * Math.sqrt(motor.mms * motor.cms));

/** What a sound of this amplitude asks of one mount. */
function strained(one: Installation, samples: Float32Array, lift: Lift | null = null): Strained {
  const { terminals, displacement, current } = strainFilters(ruleAnswer(one, AIR, IN_FRONT), RATE, lift);
  const behind = (filter: Float32Array) =>
    strain(new LoopFilter(samples, filter.length).through(filter), RATE);
  const own = strain(samples, RATE);
  return {
    own,
    terminals: terminals ? behind(terminals) : own,
    displacement: displacement.map(behind),
    current: current.map(behind)
  };
}

const sine = (frequency: number, amplitude = 0.3) =>
  Float32Array.from({ length: RATE }, (_, i) => amplitude * Math.sin((2 * Math.PI * frequency * i) / RATE));

describe('a sine at 2 V', () => {
  // Small (1972), worked out apart: x = (Bl/Re)·U/|1/Cms − ω²Mms + jω(Rms + Bl²/Re)|, I = U/|Z|
  it.each([60, 150, 348, 1200])('%d Hz: travel and heat in closed form', (frequency) => {
    const { mms, cms, bl, re, qms } = motor;
    const w = 2 * Math.PI * frequency;
    const rms = Math.sqrt(mms / cms) / qms;
    const size = Math.hypot(1 / cms - w * w * mms, w * (rms + (bl * bl) / re));
    const travel = (Math.SQRT2 * 2 * bl) / re / size;
    const [zr, zi] = [w * rms, 1 / cms - w * w * mms];
    // Z = Re + jω·Bl²/(1/Cms − ω²Mms + jω·Rms)
    const square = zr * zr + zi * zi;
    const z = [re + (w * bl * bl * zr) / square, (w * bl * bl * zi) / square];
    const heat = (4 / (z[0] ** 2 + z[1] ** 2)) * re;
    const limits = limitsOf(strained(DEMO['free air'], sine(frequency)), 2, motor, null)!;
    close(limits.travel, travel, { rel: 0.01, because: 'a filter of 85 ms' });
    close(limits.heat.mean, heat, { rel: 0.01, because: 'a filter of 85 ms' });
    close(limits.heat.loudest, heat, { rel: 0.01, because: 'every second is alike' });
    expect(limits.clipping).toBeNull();
  });
});

test('how loud the sound lies in its file changes nothing; the drive is its own rms', () => {
  const [soft, loud] = [0.01, 0.5].map((amplitude) =>
    limitsOf(strained(DEMO['flat plate'], sine(200, amplitude)), 1, motor, null)
  );
  close(soft!.travel, loud!.travel, { rel: 1e-4, because: 'single precision' });
});

test('the highest drive is the one at which the first limit is met', () => {
  const of = strained(DEMO['closed box'], sine(100));
  const amplifier = { leastLoad: 8, power: 1 };
  const { first, most } = limitsOf(of, 1, motor, amplifier)!;
  expect(first.volts).toBe(Math.min(...Object.values(most)));
  const there = limitsOf(of, first.volts, motor, amplifier)!;
  const used = {
    travel: there.travel / motor.xmax,
    heat: there.heat.loudest / motor.ratedPower,
    clipping: there.clipping!
  };
  close(used[first.limit], 1, { rel: 1e-9, because: 'that is the limit' });
  for (const share of Object.values(used)) expect(share).toBeLessThan(1 + 1e-9);
  // a sine of √(P·R) volts just reaches the rail
  close(most.clipping!, Math.sqrt(8), { rel: 1e-6, because: 'a sine' });
});

test.each([60, 150, 300, 1200])(
  'a lift of 6 dB below 300 Hz costs a sine of %d Hz that much more travel and voltage, and its square in heat',
  (frequency) => {
    const lift = { gainDb: 6, below: 300 };
    const amplifier = { leastLoad: 8, power: 1 };
    const [plain, lifted] = [null, lift].map((each) =>
      limitsOf(strained(DEMO['flat plate'], sine(frequency), each), 1, motor, amplifier)!
    );
    // |H|² of the cookbook's shelf by hand: (A − w²)² + 2A·w² over (1 − A·w²)² + 2A·w², times A²
    const [a, w2] = [10 ** (6 / 40), (frequency / 300) ** 2];
    const more = a * Math.sqrt(((a - w2) ** 2 + 2 * a * w2) / ((1 - a * w2) ** 2 + 2 * a * w2));
    close(lifted.travel / plain.travel, more, { rel: 0.01, because: 'a filter of 85 ms' });
    close(lifted.heat.loudest / plain.heat.loudest, more ** 2, { rel: 0.02, because: 'a filter of 85 ms' });
    close(lifted.clipping! / plain.clipping!, more, { rel: 0.01, because: 'a filter of 85 ms' });
    close(lifted.terminals, more, { rel: 0.01, because: 'a filter of 85 ms' });
    close(plain.terminals, 1, { rel: 1e-12, because: 'rounding' });
    close(lifted.first.volts, plain.first.volts / more, { rel: 0.02, because: 'the same limit comes first' });
  }
);

test('silence has no limits', () => {
  expect(limitsOf(strained(DEMO['free air'], new Float32Array(4800)), 1, motor, null)).toBeNull();
});

describe('impedance', () => {
  it('of a single speaker: most at its resonance, Re·(1 + Qms/Qes), least where nothing moves', () => {
    const { frequency, ohms, least } = impedanceCurve(ruleAnswer(DEMO['free air'], AIR, IN_FRONT));
    const qes = (2 * Math.PI * FS * motor.mms * motor.re) / motor.bl ** 2;
    const most = Math.max(...ohms);
    close(most, motor.re * (1 + motor.qms / qes), { rel: 0.001, because: '48 points an octave' });
    close(frequency[ohms.indexOf(most)], FS, { rel: 0.015, because: '48 points an octave' });
    close(least.ohms, motor.re, { rel: 0.001, because: 'at 20 Hz or 10 kHz hardly anything moves' });
  });

  it('of two in parallel: half', () => {
    const plate = {
      ...DEMO['flat plate'],
      mount: { ...DEMO['flat plate'].mount, offset: [-0.03, 0] }
    } as Installation;
    const second = { at: [0.03, 0], reversed: false, wiring: 'parallel' } as const;
    const [one, two] = [plate, { ...plate, second }].map((each) =>
      impedanceCurve(ruleAnswer(each, AIR, IN_FRONT))
    );
    close(two.least.ohms, one.least.ohms / 2, { rel: 1e-9, because: 'two equal ones' });
  });
});
