import { describe, expect, it } from 'vitest';
import { arm } from '../../../../src/lib/acoustics/rule/arm.js';
import type { Listener } from '../../../../src/lib/acoustics/listener.js';
import { ruleOfThumb } from '../../../../src/lib/acoustics/rule/rule-of-thumb.js';
import { ruleFigures } from '../../../../src/lib/acoustics/rule/rule-figures.js';
import { close } from '../../../helpers/close.js';
import { AIR, DEMO, IN_FRONT, ovalIn } from '../../../helpers/demo-installations.js';

const OPEN = ['free air', 'flat plate', 'round plate', 'cab body'];
const at = (distance: number): Listener => ({ ...IN_FRONT, distance });

describe('ruleOfThumb', () => {
  it('returns the grid it was given', () => {
    const f = Float64Array.of(100, 1000);
    const response = ruleOfThumb(DEMO['free air'], AIR, IN_FRONT, f);
    expect(response.frequency).toBe(f);
    expect([response.re.length, response.im.length]).toEqual([2, 2]);
  });

  it('open mounts, ideal speaker: tends to j·k·d', () => {
    const f = 1;
    for (const name of OPEN) {
      const h = ruleOfThumb(DEMO[name], AIR, IN_FRONT, Float64Array.of(f), 'ideal');
      const kd = ((2 * Math.PI * f) / 343.2) * arm(DEMO[name])!;
      close(h.im[0], kd, { rel: 1e-5, because: `${name}: terms of (f/fc)² are left` });
      close(h.re[0] / kd, 0, { abs: 1e-3, because: `${name}: ahead by a quarter turn` });
    }
  });

  it('every mount tends to 0 dB far above', () => {
    for (const [name, installation] of Object.entries(DEMO))
      for (const speaker of ['ideal', 'full'] as const) {
        const h = ruleOfThumb(installation, AIR, IN_FRONT, Float64Array.of(1e7), speaker);
        close(h.re[0], 1, { abs: 1e-4, because: name });
        close(h.im[0], 0, { abs: 1e-3, because: name });
      }
  });

  it('full is ideal times the speaker, which in free air or a plate does not depend on the mount', () => {
    const f = Float64Array.of(60, 348, 1000, 9000);
    const ratio = (name: string) => {
      const full = ruleOfThumb(DEMO[name], AIR, IN_FRONT, f, 'full');
      const ideal = ruleOfThumb(DEMO[name], AIR, IN_FRONT, f, 'ideal');
      return Array.from(
        f,
        (_, i) => Math.hypot(full.re[i], full.im[i]) / Math.hypot(ideal.re[i], ideal.im[i])
      );
    };
    const { fs, qts } = ruleFigures(DEMO['free air'], AIR).speaker;
    for (const name of OPEN)
      ratio(name).forEach((x, i) => {
        const w = f[i] / fs;
        close(x, (w * w) / Math.hypot(1 - w * w, w / qts), { rel: 1e-12, because: `${name} at ${f[i]} Hz` });
      });
  });

  it('the box: at its resonance the speaker’s part is Qtc', () => {
    const { box } = ruleFigures(DEMO['closed box'], AIR);
    const f = Float64Array.of(box!.fc);
    const full = ruleOfThumb(DEMO['closed box'], AIR, IN_FRONT, f, 'full');
    const ideal = ruleOfThumb(DEMO['closed box'], AIR, IN_FRONT, f, 'ideal');
    const ratio = Math.hypot(full.re[0], full.im[0]) / Math.hypot(ideal.re[0], ideal.im[0]);
    close(ratio, box!.qtc, { rel: 1e-12, because: 'H = j·Q at the resonance' });
  });

  it('a near listener hears open mounts 1 + 1/(jkr) louder: 6 dB at 100 Hz and 0.3 m', () => {
    for (const name of OPEN)
      for (const [f, r, expectedDb] of [
        [100, 0.3, 6.3],
        [60, 1, 2.6],
        [150, 1, 0.5]
      ]) {
        const near = ruleOfThumb(DEMO[name], AIR, at(r), Float64Array.of(f));
        const far = ruleOfThumb(DEMO[name], AIR, IN_FRONT, Float64Array.of(f));
        const kr = (2 * Math.PI * f * r) / 343.2;
        const got = 20 * Math.log10(Math.hypot(near.re[0], near.im[0]) / Math.hypot(far.re[0], far.im[0]));
        close(got, 10 * Math.log10(1 + 1 / kr ** 2), { abs: 1e-9, because: '|1 + 1/(jkr)|' });
        close(got, expectedDb, { abs: 0.1, because: `${f} Hz at ${r} m, by hand` });
        const quarter = Math.atan2(near.im[0], near.re[0]) - Math.atan2(far.im[0], far.re[0]);
        close(Math.tan(quarter), -1 / kr, { rel: 1e-9, because: 'phase of 1 − j/(kr)' });
      }
  });

  it('a box does not mind the distance: it radiates from one point', () => {
    const f = Float64Array.of(60, 300, 3000);
    const near = ruleOfThumb(DEMO['closed box'], AIR, at(0.3), f);
    expect(near).toEqual(ruleOfThumb(DEMO['closed box'], AIR, IN_FRONT, f));
  });

  it('is finite at f = 0, near and far: 0, or d/r for the mount alone', () => {
    for (const [name, installation] of Object.entries(DEMO))
      for (const speaker of ['ideal', 'full'] as const)
        for (const listener of [IN_FRONT, at(0.5)]) {
          const h = ruleOfThumb(installation, AIR, listener, Float64Array.of(0), speaker);
          const level = Math.hypot(h.re[0], h.im[0]);
          const d = arm(installation);
          const expected = speaker === 'full' ? 0 : d === null ? 0.5 : listener === IN_FRONT ? 0 : d / 0.5;
          close(level, expected, { rel: 1e-12, because: `${name}, ${speaker}` });
        }
  });

  it('a warmer room moves the corner with the speed of sound', () => {
    const warm = { temperatureC: 35 };
    const ratio =
      ruleFigures(DEMO['flat plate'], warm).corner! / ruleFigures(DEMO['flat plate'], AIR).corner!;
    close(ratio, Math.sqrt(308.15 / 293.15), { rel: 1e-12, because: 'c goes with √T' });
  });

  it('refuses an angle, in one sentence', () => {
    const listener: Listener = { angleDeg: 30, plane: 'length' };
    expect(() => ruleOfThumb(DEMO['free air'], AIR, listener, Float64Array.of(100))).toThrow(
      new RangeError(
        'the rule of thumb knows the sound straight in front of the cone only: angle must be 0, got 30'
      )
    );
  });

  it('refuses bad distances, temperatures, frequencies and installations', () => {
    const f = Float64Array.of(100);
    expect(() => ruleOfThumb(DEMO['free air'], AIR, at(0), f)).toThrow(
      'distance of the listener must be within 0.01 … 1000 m, got 0'
    );
    expect(() => ruleOfThumb(DEMO['free air'], { temperatureC: NaN }, IN_FRONT, f)).toThrow(
      'temperature must be within -40 … 60 °C, got NaN'
    );
    for (const bad of [-1, NaN, Infinity])
      expect(() => ruleOfThumb(DEMO['free air'], AIR, IN_FRONT, Float64Array.of(100, bad))).toThrow(
        `a frequency must be at least 0 Hz, got ${bad}`
      );
    const tiny = ovalIn({ kind: 'plate', shape: 'round', diameter: 0.02, offset: [0, 0] });
    expect(() => ruleOfThumb(tiny, AIR, IN_FRONT, f)).toThrow(/^the cone .* is larger than the plate/);
  });
});
