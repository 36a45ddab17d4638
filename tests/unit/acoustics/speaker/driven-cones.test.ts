import { describe, expect, it, test } from 'vitest';
import { airDensity, soundSpeed } from '../../../../src/lib/acoustics/air.js';
import { outlineArea } from '../../../../src/lib/acoustics/outline.js';
import { closedBox } from '../../../../src/lib/acoustics/rule/closed-box.js';
import { secondOrderHighPass } from '../../../../src/lib/acoustics/rule/second-order.js';
import {
  accelerations,
  coilCurrents,
  drivenCones,
  electricalImpedance,
  type Wiring
} from '../../../../src/lib/acoustics/speaker/driven-cones.js';
import { motorFigures } from '../../../../src/lib/acoustics/speaker/motor-figures.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { complexArray, type ComplexArray } from '../../../../src/lib/numeric/complex-array.js';
import { random } from '../../../../src/lib/sounds/blocks/random.js';
import { close } from '../../../helpers/close.js';

const AIR = { temperatureC: 20 };
const { motor, cone } = SPEAKERS.oval;
const SD = outlineArea(cone);
const FIGURES = motorFigures(motor, SD, AIR);
const GRID = Float64Array.of(0, 20, 100, 200, 348, 500, 700, 1000, 3000, 10000);
const WIRINGS: Wiring[] = (['parallel', 'series'] as const).flatMap((wiring) =>
  [false, true].map((reversed) => ({ wiring, reversed }))
);

const springs = (...stiffness: number[]): ComplexArray[] =>
  stiffness.map((s) => ({ re: new Float64Array(GRID.length).fill(s), im: new Float64Array(GRID.length) }));
const NONE = springs(0);

function expectSame(got: ComplexArray, expected: ComplexArray, because: string, rel = 1e-10): void {
  for (let i = 0; i < got.re.length; i++) {
    const size = Math.hypot(expected.re[i], expected.im[i]);
    close(got.re[i], expected.re[i], { abs: rel * Math.max(size, 1e-12), because });
    close(got.im[i], expected.im[i], { abs: rel * Math.max(size, 1e-12), because });
  }
}

describe('a single speaker', () => {
  // R. H. Small, J. Audio Eng. Soc. 20 (1972) 383 and 798
  it('without a load is the second-order high-pass of fs and Qts', () => {
    const [a] = accelerations(drivenCones(GRID, motor, SD, 0, NONE));
    expectSame(a, secondOrderHighPass(GRID, FIGURES.fs, FIGURES.qts), 'the same formula, rounding');
  });

  it('on the spring of a box resonates at fc with Qtc', () => {
    const volume = 14e-6;
    const spring = (airDensity(AIR) * soundSpeed(AIR) ** 2) / volume;
    const { fc, qtc } = closedBox(FIGURES, volume);
    const [a] = accelerations(drivenCones(GRID, motor, SD, 0, springs(spring)));
    expectSame(a, secondOrderHighPass(GRID, fc, qtc), 'the same formula, rounding');
  });

  it('has the impedance Re·(1 + Qms/Qes) at its resonance, and Re at 0 Hz', () => {
    const grid = Float64Array.of(0, FIGURES.fs);
    const z = electricalImpedance(
      drivenCones(grid, motor, SD, 0, [{ re: new Float64Array(2), im: new Float64Array(2) }])
    );
    close(z.re[0], motor.re, { rel: 1e-12, because: 'nothing moves' });
    close(z.re[1], motor.re * (1 + motor.qms / FIGURES.qes), { rel: 1e-10, because: 'Small 1972' });
    close(z.im[1], 0, { abs: 1e-9, because: 'at resonance' });
  });

  it('refuses a moving mass that is all air', () => {
    expect(() => drivenCones(GRID, motor, SD, motor.mms, NONE)).toThrow(
      'the moving mass must be above the 0.55 g of air that the cone carries, got 0.55 g'
    );
  });
});

describe('two speakers without a load between them', () => {
  const spring = springs(2e5)[0];
  const [one] = drivenCones(GRID, motor, SD, 0, [spring]).displacement;
  const z = electricalImpedance(drivenCones(GRID, motor, SD, 0, [spring]));
  const two = (wiring: Wiring) => drivenCones(GRID, motor, SD, 0, [spring, springs(0)[0], spring], wiring);
  const times = ({ re, im }: ComplexArray, factor: number): ComplexArray => ({
    re: re.map((x) => x * factor),
    im: im.map((x) => x * factor)
  });

  it.each(WIRINGS)(
    'move as one of them would, or half as far in series: $wiring, reversed: $reversed',
    (wiring) => {
      const share = wiring.wiring === 'series' ? 0.5 : 1;
      const [first, second] = two(wiring).displacement;
      expectSame(first, times(one, share), 'the same equation');
      expectSame(second, times(one, wiring.reversed ? -share : share), 'the same equation');
      expectSame(
        electricalImpedance(two(wiring)),
        times(z, wiring.wiring === 'series' ? 2 : 0.5),
        'two equal impedances'
      );
    }
  );
});

test('two in one box: in phase they feel its spring twice, reversed not at all', () => {
  const spring = springs(3e6)[0];
  for (const wiring of WIRINGS) {
    const felt = wiring.reversed ? 0 : 6e6;
    const [alone] = drivenCones(GRID, motor, SD, 0, springs(felt)).displacement;
    const [first] = drivenCones(GRID, motor, SD, 0, [spring, spring, spring], wiring).displacement;
    const share = wiring.wiring === 'series' ? 0.5 : 1;
    expectSame(
      first,
      { re: alone.re.map((x) => share * x), im: alone.im.map((x) => share * x) },
      'both push on the same air',
      1e-8
    );
  }
});

test('power in = heat in the coils + friction + what goes into the load, whatever the load and the wiring', () => {
  const chance = random(41);
  for (let n = 0; n < 60; n++) {
    const w = 2 * Math.PI * 10 ** (1.5 + 2.5 * chance.uniform());
    const grid = Float64Array.of(w / (2 * Math.PI));
    const any = (size: number) => size * (2 * chance.uniform() - 1);
    // resistances of a passive load: R11·R22 ≥ R12²
    const [r11, r22] = [3e5 * chance.uniform(), 3e5 * chance.uniform()];
    const r12 = Math.sqrt(r11 * r22) * any(0.99);
    const [s11, s12, s22] = [any(3e6), any(1e6), any(3e6)];
    const at = (s: number, r: number): ComplexArray => ({
      re: Float64Array.of(s),
      im: Float64Array.of(w * r)
    });
    const load = [at(s11, r11), at(s12, r12), at(s22, r22)];
    for (const wiring of [null, ...WIRINGS]) {
      const driven = drivenCones(grid, motor, SD, 0, wiring ? load : load.slice(0, 1), wiring);
      const x = driven.displacement.map(({ re, im }) => ({ re: re[0], im: im[0] }));
      const currents = coilCurrents(driven).map(({ re, im }) => re[0] ** 2 + im[0] ** 2);
      const z = electricalImpedance(driven);
      const power = z.re[0] / (z.re[0] ** 2 + z.im[0] ** 2);
      const heat = currents.reduce((sum, square) => sum + square * motor.re, 0);
      const rms = Math.sqrt(motor.mms / motor.cms) / motor.qms;
      const friction = x.reduce((sum, { re, im }) => sum + rms * w * w * (re * re + im * im), 0);
      const R = [
        [r11, r12],
        [r12, r22]
      ];
      let taken = 0;
      x.forEach((a, i) =>
        x.forEach((b, j) => (taken += SD * SD * w * w * R[i][j] * (a.re * b.re + a.im * b.im)))
      );
      close(heat + friction + taken, power, { rel: 1e-9, because: 'no power is lost or made' });
      expect(power).toBeGreaterThan(0);
    }
  }
});

test('a grid of no frequencies gives none', () => {
  expect(
    electricalImpedance(drivenCones(new Float64Array(), motor, SD, 0, [complexArray(0)])).re
  ).toHaveLength(0);
});
