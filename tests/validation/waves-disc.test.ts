import { describe, it } from 'vitest';
import type { Installation } from '../../src/lib/acoustics/installation.js';
import type { Outline } from '../../src/lib/acoustics/outline.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { solveMount, waveResponse, type SolvedMount } from '../../src/lib/waves/wave-solution.js';
import { close } from '../helpers/close.js';
import { AIR } from '../helpers/demo-installations.js';
import disc from '../reference/disc-small-source.json';
import { C, db } from '../unit/waves/wave-cases.js';

function coneInDisc(cone: number, diameter: number): Installation {
  const outline: Outline = { shape: 'round', diameter: cone };
  return {
    speaker: { ...SPEAKERS.oval, frame: outline, cone: outline },
    mount: { kind: 'plate', shape: 'round', diameter, offset: [0, 0] },
    turn: 0
  };
}

function at(mount: SolvedMount, f: number, angleDeg: number) {
  const { re, im } = waveResponse(mount, { angleDeg, plane: 'width' }, Float64Array.of(f), 'ideal');
  return { re: re[0], im: im[0] };
}

// C. Flammer, Spheroidal Wave Functions, 1957; C. J. Bouwkamp, 1950 (tests/reference/disc-small-source.json)
describe('a small cone in the middle of a round plate against the exact disc', () => {
  for (const [diameter, cone] of [
    [0.2, 0.004],
    [0.06, 0.002]
  ]) {
    const frequency = (ka: number) => (ka * C) / (Math.PI * diameter);
    it(
      `full, plate of ${diameter * 1000} mm: 0.2 dB to ka = 3, 0.5 dB at ka = 5, any angle`,
      { timeout: 60000 },
      () => {
        const mount = solveMount(coneInDisc(cone, diameter), AIR, { accuracy: 'full', loss: 0 });
        for (const { ka, thetaDeg, levelDb, re, im } of disc.rows) {
          const got = at(mount, frequency(ka), thetaDeg);
          close(db(got), levelDb, {
            abs: ka <= 3 ? 0.2 : 0.5,
            because: `bar of the full mesh, ka ${ka}, ${thetaDeg}°`
          });
          close(Math.hypot(got.re - re, got.im - im) / Math.hypot(re, im), 0, {
            abs: ka <= 3 ? 0.025 : 0.06,
            because: 'the same bars for the complex value'
          });
        }
      }
    );

    it(`draft, plate of ${diameter * 1000} mm: 0.6 dB to ka = 2, any angle`, () => {
      const mount = solveMount(coneInDisc(cone, diameter), AIR, { accuracy: 'draft', loss: 0 });
      for (const { ka, thetaDeg, levelDb } of disc.rows.filter((row) => frequency(row.ka) <= mount.highest))
        if (ka <= 2)
          close(db(at(mount, frequency(ka), thetaDeg)), levelDb, {
            abs: 0.6,
            because: 'bar of the draft mesh'
          });
    });
  }
});

describe('the whole disc moving (H. Lamb, Hydrodynamics, 6th ed., arts. 102 and 108, from memory)', () => {
  const a = 0.05;
  const mount = solveMount(coneInDisc(2 * a, 2 * a), AIR, { loss: 0 });
  const f = 20;
  const ka = (2 * Math.PI * f * a) / C;

  it('arm 4a/(3π)', () => {
    close(at(mount, f, 0).im / ka, 4 / (3 * Math.PI), { rel: 0.01, because: 'bar; the mesh costs 0.5 %' });
  });

  it('air load (8/3)·ρ·a³', () => {
    const { load } = waveResponse(mount, { angleDeg: 0, plane: 'width' }, Float64Array.of(f), 'ideal');
    const mass = (load.im[0] / (2 * Math.PI * f)) * (Math.PI * a * a) ** 2;
    close(mass, (8 / 3) * 1.204 * a ** 3, { rel: 0.01, because: 'bar; the mesh costs 0.5 %' });
  });
});
