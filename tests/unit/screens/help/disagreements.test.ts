import { describe, expect, it } from 'vitest';
import type { Response } from '../../../../src/lib/acoustics/response.js';
import { ruleOfThumb } from '../../../../src/lib/acoustics/rule/rule-of-thumb.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { installationOf } from '../../../../src/lib/file/installation-of.js';
import { DISAGREEMENTS } from '../../../../src/lib/screens/help/disagreements.js';
import { thirdOctaveBands } from '../../../../src/lib/numeric/third-octave-bands.js';
import { waveSolution } from '../../../../src/lib/waves/wave-solution.js';
import { close } from '../../../helpers/close.js';

const BANDS = thirdOctaveBands(100, 8000);
/** Points of a band, evenly spaced in the logarithm of the frequency. */
const POINTS = 24;
const GRID = Float64Array.from(
  BANDS.flatMap(({ lower, upper }) =>
    Array.from({ length: POINTS }, (_, i) => lower * (upper / lower) ** ((i + 0.5) / POINTS))
  )
);

/** Mean level of each band for a sound with the same power in every part of an octave. */
function bandLevels({ re, im }: Response): number[] {
  return BANDS.map((_, band) => {
    let sum = 0;
    for (let i = band * POINTS; i < (band + 1) * POINTS; i++) sum += re[i] ** 2 + im[i] ** 2;
    return 10 * Math.log10(sum / POINTS);
  });
}

describe('DISAGREEMENTS', () => {
  const bench = demoBench();

  it('follow the order of the demo bench, and none of its mounts is missing', () => {
    expect([...new Set(DISAGREEMENTS.map(({ kind }) => kind))]).toEqual(
      bench.setups.map(({ mount }) => mount.kind)
    );
  });

  for (const setup of bench.setups) {
    const { kind } = setup.mount;
    it(`are what both models say, where they differ most: ${setup.name}`, { timeout: 30_000 }, () => {
      const installation = installationOf(bench, setup);
      const rule = bandLevels(ruleOfThumb(installation, bench.air, bench.listener, GRID));
      const wave = bandLevels(waveSolution(installation, bench.air, bench.listener, GRID));
      const above = wave.map((level, band) => level - rule[band]);
      const furthest = [Math.max(...above), Math.min(...above)].filter((db) => Math.abs(db) >= 2);
      const told = DISAGREEMENTS.filter((one) => one.kind === kind);
      expect(told.map(({ around }) => around)).toEqual(
        furthest.map((db) => BANDS[above.indexOf(db)].nominal)
      );
      for (const { around, ruleDb, waveDb } of told) {
        const band = BANDS.findIndex(({ nominal }) => nominal === around);
        const rounded = { abs: 0.06, because: `told with one decimal, ${kind} at ${around} Hz` };
        close(ruleDb, rule[band], rounded);
        close(waveDb, wave[band], rounded);
      }
    });
  }
});
