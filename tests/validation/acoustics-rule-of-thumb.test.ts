import { describe, expect, it } from 'vitest';
import { arm } from '../../src/lib/acoustics/rule/arm.js';
import { firstOrderHighPass } from '../../src/lib/acoustics/rule/first-order.js';
import type { Installation } from '../../src/lib/acoustics/installation.js';
import type { Mount } from '../../src/lib/acoustics/mounts/mount.js';
import type { Outline } from '../../src/lib/acoustics/outline.js';
import { ruleFigures } from '../../src/lib/acoustics/rule/rule-figures.js';
import { ruleOfThumb } from '../../src/lib/acoustics/rule/rule-of-thumb.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { close } from '../helpers/close.js';
import { AIR, IN_FRONT } from '../helpers/demo-installations.js';
import disc from '../reference/disc-small-source.json';

/** A round cone of 1 mm. */
const small: Outline = { shape: 'round', diameter: 0.001 };

function coneIn(cone: Outline, mount: Mount): Installation {
  return { speaker: { ...SPEAKERS.oval, frame: cone, cone }, mount, turn: 0 };
}

function roundPlate(diameter: number, x = 0): Mount {
  return { kind: 'plate', shape: 'round', diameter, offset: [x, 0] };
}

function levelAt(installation: Installation, f: number): number {
  const h = ruleOfThumb(installation, AIR, IN_FRONT, Float64Array.of(f), 'ideal');
  return 20 * Math.log10(Math.hypot(h.re[0], h.im[0]));
}

describe('worked examples: fc = c/(2D) and the first-order high-pass, c = 343.2 m/s', () => {
  for (const [d, corner] of [
    [0.127, 1351],
    [0.04, 4290]
  ])
    it(`D = ${d * 1000} mm: ${corner} Hz`, () => {
      const figures = ruleFigures(coneIn(small, roundPlate(d)), AIR);
      close(figures.string!, d, { rel: 1e-12, because: 'a cone in the middle of a round plate' });
      close(figures.corner!, corner, {
        rel: 5e-4,
        because: 'rounded to 1 Hz; the cone is 1 mm wide, not a point'
      });
      expect(figures.halfWave).toBe(true);
    });

  it('D = 127 mm at 500 Hz: −9.19 dB', () => {
    close(levelAt(coneIn(small, roundPlate(0.127)), 500), -9.19, { abs: 0.005, because: 'two decimals' });
    const h = firstOrderHighPass(Float64Array.of(500), 343.2 / (2 * 0.127));
    close(20 * Math.log10(Math.hypot(h.re[0], h.im[0])), -9.19, { abs: 0.005, because: 'two decimals' });
  });
});

describe('the low-frequency limit against the exact disc (tests/reference/disc-small-source.json)', () => {
  // C. Flammer, Spheroidal Wave Functions, 1957; C. J. Bouwkamp, 1950
  const rows = disc.rows.filter((row) => row.thetaDeg === 0);
  const rule = (ka: number) => {
    const a = 0.1;
    return levelAt(coneIn(small, roundPlate(2 * a)), (ka * 343.2) / (2 * Math.PI * a));
  };

  it('on the axis at ka = 0.05', () => {
    const row = rows.find(({ ka }) => ka === 0.05)!;
    close(rule(0.05), row.levelDb, { abs: 0.1, because: 'the limit ka → 0, and ka is not 0' });
  });

  it('leaves out what the model page says: an overshoot of 6 to 8 dB at ka 2 to 3, where it reads up to 9.5 dB low', () => {
    const near = rows.filter(({ ka }) => ka >= 2 && ka <= 3);
    expect(near.length).toBe(2);
    for (const { ka, levelDb } of near) {
      expect(levelDb, `exact, ka = ${ka}`).toBeGreaterThan(6);
      expect(levelDb, `exact, ka = ${ka}`).toBeLessThan(8);
      expect(levelDb - rule(ka), `ka = ${ka}`).toBeLessThan(9.5);
    }
    // and it never reads too high: 0.9 dB low at ka = 0.5, 3.4 at ka = 1
    for (const { ka, levelDb } of rows) expect(rule(ka), `ka = ${ka}`).toBeLessThan(levelDb);
  });
});

describe('arms against exact potential flow (H. Lamb, Hydrodynamics, 6th ed., arts. 102, 108, 114, from memory)', () => {
  it('small cone in the middle of a round plate: 2a/π; at a distance: (2/π)·√(a² − r²)', () => {
    for (const r of [0, 0.01, 0.03, 0.045]) {
      const expected = (2 / Math.PI) * Math.sqrt(0.05 ** 2 - r ** 2);
      close(arm(coneIn(small, roundPlate(0.1, r)))!, expected, {
        rel: 5e-4,
        because: 'the cone is 1 mm wide'
      });
    }
  });

  it('the whole round plate moves: 4a/(3π)', () => {
    const whole: Outline = { shape: 'round', diameter: 0.1 };
    close(arm(coneIn(whole, roundPlate(0.1)))!, (4 * 0.05) / (3 * Math.PI), {
      rel: 1e-4,
      because: 'quadrature'
    });
  });

  it('the whole elliptic plate moves: (2/3)·b/E(m), from the flow’s added mass', () => {
    const whole: Outline = { shape: 'ellipse', length: 0.06, width: 0.04 };
    // E(1 − (2/3)²) = E(5/9) = 1.32212, scipy.special.ellipe
    close(arm(coneIn(whole, { kind: 'free' }))!, ((2 / 3) * 0.02) / 1.32212, {
      rel: 3e-4,
      because: 'five digits of E'
    });
  });
});

describe('the rectangle fit against the added mass of flat plates', () => {
  // DNV-RP-C205, table of added mass, rectangular plates (values from memory): C_A·ρ·(π/4)·a²·b; d = C_A·π·a/8
  for (const [aspect, added] of [
    [1, 0.579],
    [1.5, 0.69],
    [2, 0.757]
  ])
    it(`whole plate of 1 : ${aspect} moving`, () => {
      const a = 0.05;
      const whole: Outline = { shape: 'rectangle', length: a * aspect, width: a };
      const d = arm(coneIn(whole, { kind: 'free' }))!;
      close(20 * Math.log10(d / ((added * Math.PI * a) / 8)), 0, {
        abs: 0.3,
        because: 'dB; the fit is within 0.3 dB'
      });
    });
});
