import { describe, expect, test } from 'vitest';
import { checkInstallation } from '../../../../src/lib/acoustics/mounts/check-installation.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { MOUNT_DRAWER, setupOf } from '../../../../src/lib/screens/shelf/mount-drawer.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { readBenchFile } from '../../../../src/lib/file/read-bench-file.js';
import { writeBenchFile } from '../../../../src/lib/file/write-bench-file.js';

describe.each(MOUNT_DRAWER)('$name', (item) => {
  test('takes some speaker of the nine', () => {
    const fits = Object.values(SPEAKERS).filter((speaker) => {
      try {
        checkInstallation({ speaker, mount: item.mount, turn: 0 });
        return true;
      } catch {
        return false;
      }
    });
    expect(fits).not.toHaveLength(0);
  });

  test('is saved and read back as it is', () => {
    const bench = { ...demoBench(), setups: [setupOf(item, 'oval')] };
    expect(readBenchFile(writeBenchFile(bench))).toEqual(bench);
  });
});

test('the narrow hood does not take the 28 × 40 mm oval', () => {
  const hood = MOUNT_DRAWER.find(({ name }) => name === 'Hood')!;
  expect(() => checkInstallation({ speaker: SPEAKERS.oval, mount: hood.mount, turn: 0 })).toThrow(
    'does not fit across the shell (18 mm wide inside)'
  );
});
