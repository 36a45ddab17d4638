import { expect, test } from 'vitest';
import { checkInstallation } from '../../../src/lib/acoustics/mounts/check-installation.js';
import { usualAbove } from '../../../src/lib/acoustics/mounts/board.js';
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

test('over a board a setup stands as high as it says, or as is usual for its kind', () => {
  const bench = readBenchFile(
    demoBenchText((loose) => {
      loose.version = 3;
      loose.listener = { board: true };
      loose.setups[0].above = 0.05;
      loose.setups[1].facing = 'down';
    })
  );
  const boards = bench.setups.map((setup) => installationOf(bench, setup).board!);
  expect(boards[0]).toEqual({ above: 0.05, facing: 'up' });
  expect(boards[1]).toEqual({ above: 0.014, facing: 'down' });
  bench.setups.forEach((setup, i) => {
    if (i > 1)
      expect([setup.mount.kind, boards[i].above]).toEqual([setup.mount.kind, USUAL[setup.mount.kind]]);
    expect(() => checkInstallation(installationOf(bench, setup))).not.toThrow();
  });
  // a magnet deeper than the usual height is held clear of the board
  const deep = { ...bench.speakers.oval, depth: 0.06 };
  expect(usualAbove(deep, { kind: 'free' }, 'up')).toBeGreaterThan(0.06);
  const inHand = { ...bench, listener: { ...bench.listener, board: false } };
  expect(installationOf(inHand, bench.setups[0])).not.toHaveProperty('board');
});

const USUAL = { free: 0.035, plate: 0.035, shell: 0.014, box: 0.02 };
