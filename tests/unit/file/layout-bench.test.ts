import { expect, test } from 'vitest';
import { checkInstallation } from '../../../src/lib/acoustics/mounts/check-installation.js';
import { demoBench } from '../../../src/lib/file/demo-bench.js';
import { installationOf } from '../../../src/lib/file/installation-of.js';
import { layoutBench } from '../../../src/lib/file/layout-bench.js';
import { readBenchFile } from '../../../src/lib/file/read-bench-file.js';
import { writeBenchFile } from '../../../src/lib/file/write-bench-file.js';

test('every mount of the demo on the layout can be built, and it is saved and read back as it is', () => {
  const bench = layoutBench();
  for (const setup of bench.setups) checkInstallation(installationOf(bench, setup));
  expect(readBenchFile(writeBenchFile(bench))).toEqual(bench);
});

test('no. 41 stands 14 mm above the board with its chassis; the tender looks down, tight and with a gap of 0.1 mm', () => {
  const bench = layoutBench();
  const [cab, running, tender, leaky] = bench.setups.map((setup) => installationOf(bench, setup));
  expect([cab.board, running.board]).toEqual([
    { above: 0.014, facing: 'up' },
    { above: 0.014, facing: 'up' }
  ]);
  expect(running.mount.chassis).toBeDefined();
  expect({ ...running.mount, chassis: undefined }).toEqual({ ...cab.mount, chassis: undefined });
  expect([tender.board!.facing, leaky.board!.facing]).toEqual(['down', 'down']);
  expect({ ...leaky.mount, leak: undefined }).toEqual({ ...tender.mount, leak: undefined });
  expect(leaky.mount.leak).toMatchObject({ gap: 0.0001 });
});

test('the demo bench knows nothing of it', () => {
  expect(demoBench().setups.map(({ name }) => name)).toEqual([
    'Free air',
    'Flat plate',
    'Cab body',
    'Closed box'
  ]);
  expect(demoBench().listener.board).toBeUndefined();
});
