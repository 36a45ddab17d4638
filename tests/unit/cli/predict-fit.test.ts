import { describe, expect, test, vi } from 'vitest';
import { predict } from '../../../src/cli/predict.js';
import type { FitPrediction } from '../../../src/lib/evaluation/fit/fit-now.js';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { readBenchFile } from '../../../src/lib/file/read-bench-file.js';
import { drivenBench, withFile } from '../../helpers/predicted.js';

// Each command is a process of its own; a busy machine takes its time.
vi.setConfig({ testTimeout: 30_000 });

describe('--fit', () => {
  /** In which one of the reference speakers fits: in the roof, both ways round. */
  const text = drivenBench({
    version: 8,
    model: { length: 0.016, width: 0.016, height: 0.01, roof: [0, 0.016], sounds: [{ kind: 'pinkNoise' }] }
  });

  test('prints the ranking as JSON, each line with the setup that it is, and what does not fit', async () => {
    const printed = await predict(withFile(['-', '--fit', '--by', 'even'], text));
    const fitted = JSON.parse(printed) as FitPrediction;
    expect(fitted).toMatchObject({ model: 'My model', by: 'even', accuracy: 'draft', drive: 1, refused: [] });
    expect(fitted.ranking.map(({ speaker, way }) => `${speaker} ${way}`)).toContain('phone-11x15 roof');
    const evenness = fitted.ranking.map(({ unevennessDb }) => unevennessDb);
    expect(evenness).toEqual([...evenness].sort((a, b) => a - b));
    expect(fitted.misfits).toContainEqual({
      speaker: 'oval',
      way: 'roof',
      why: 'it is 24 mm too large: it needs 40 mm along, and there are 16 mm for it',
      remedy: null
    });
    // a setup of the ranking is one of a bench file
    const { setup } = fitted.ranking[0];
    const again = {
      ...(JSON.parse(text) as object),
      setups: [setup],
      speakers: { [setup.speaker]: SPEAKERS[setup.speaker] }
    };
    expect(readBenchFile(JSON.stringify(again)).setups).toEqual([setup]);
  });

  test('and as a table, one row a candidate', async () => {
    const rows = (await predict(withFile(['-', '--fit', '--format', 'csv'], text))).trimEnd().split('\n');
    expect(rows[0]).toBe(
      'place,tied,name,speaker,way,level_db,reaches_down_hz,unevenness_db,space_m3,price,loudest_db,loudest_v,limit'
    );
    expect(rows.length).toBeGreaterThan(1);
    expect(rows[1]).toMatch(/^1,(yes|no),/);
  });
});
