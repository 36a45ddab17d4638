import { expect, test } from 'vitest';
import { checkInstallation } from '../../../src/lib/acoustics/mounts/check-installation.js';
import { installationOf } from '../../../src/lib/file/installation-of.js';
import { readBenchFile } from '../../../src/lib/file/read-bench-file.js';
import { demoBenchText } from '../../helpers/demo-bench-text.js';

test('a setup becomes what the models take', () => {
  const bench = readBenchFile(demoBenchText((loose) => (loose.setups[1].turn = 90)));
  expect(installationOf(bench, bench.setups[1])).toEqual({
    speaker: bench.speakers.oval,
    mount: bench.setups[1].mount,
    turn: 90
  });
});

test('every mount of the demo can be built', () => {
  const bench = readBenchFile(demoBenchText());
  for (const setup of bench.setups)
    expect(() => checkInstallation(installationOf(bench, setup))).not.toThrow();
});

test('without motor values only the mount alone can be asked for', () => {
  const bench = readBenchFile(demoBenchText((loose) => delete loose.speakers.oval.motor));
  const [setup] = bench.setups;
  expect(() => installationOf(bench, setup)).toThrow(
    new RangeError(
      'speaker "28 × 40 mm" has no motor values, so only its mount alone (ideal) can be predicted'
    )
  );
  expect(() => checkInstallation(installationOf(bench, setup, 'ideal'))).not.toThrow();
});
