import { describe, expect, it } from 'vitest';
import { kernelTable } from '../../../../src/lib/waves/assembly/kernel-table.js';
import { close } from '../../../helpers/close.js';

/** f = (e^{−jkr} − 1 + jkr + k²r²/2)/r for a real k. */
function f(k: number, r: number): [number, number] {
  const x = k * r;
  return [(Math.cos(x) - 1 + (x * x) / 2) / r, (x - Math.sin(x)) / r];
}

describe('kernelTable', () => {
  const k = 7;
  const reach = 3;
  const { values, steps } = kernelTable(k, 0, reach);
  const first = (r: number, part: 0 | 1, step = 1e-4) =>
    (f(k, r + step)[part] - f(k, r - step)[part]) / (2 * step) / r;

  for (const r of [0.3, 0.7, 1.5, 2.9])
    it(`is the derivative of the remainder at ${r}`, () => {
      const i = Math.round((r * steps) / reach);
      const at = (i * reach) / steps;
      for (const part of [0, 1] as const) {
        close(values[4 * i + part], first(at, part), {
          rel: 1e-5,
          abs: 1e-4,
          because: 'central differences'
        });
        const slope = (at * (first(at + 0.01, part) - first(at - 0.01, part))) / 0.02;
        close(values[4 * i + 2 + part], slope, {
          rel: 5e-3,
          abs: 0.05,
          because: 'central differences of those'
        });
      }
    });

  it('starts at jk³/3 and 0', () => {
    expect([...values.subarray(0, 4)].map((x) => x + 0)).toEqual([0, k ** 3 / 3, 0, 0]);
  });

  it('has no seam between series and closed form', () => {
    for (let i = 1; i < steps; i++)
      for (let part = 0; part < 4; part++) {
        const bend = values[4 * (i + 1) + part] - 2 * values[4 * i + part] + values[4 * (i - 1) + part];
        expect(Math.abs(bend)).toBeLessThan(k ** 3 * ((k * reach) / steps) ** 2);
      }
  });

  it('decays with distance under loss, as e^{−ηkr} does', () => {
    const lossy = kernelTable(k, 0.05, reach);
    const phase = k * reach;
    const i = 4 * lossy.steps;
    // far away the phase-carrying part of F1 is (1 + jkr)·e^{−jkr}/r³
    const carried = (table: Float64Array, eta: number) => {
      const k2 = [k * k * (1 - eta * eta), -2 * eta * k * k];
      return Math.hypot(table[i] - 1 / reach ** 3 - k2[0] / (2 * reach), table[i + 1] - k2[1] / (2 * reach));
    };
    close(carried(lossy.values, 0.05) / carried(values, 0), Math.exp(-0.05 * phase), {
      rel: 0.01,
      because: 'but for |1 + jkr| with the complex k, 0.1 %'
    });
  });
});
