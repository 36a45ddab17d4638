import { expect, test } from 'vitest';
import type { Mount } from '../../../src/lib/acoustics/mounts/mount.js';
import { stringPath } from '../../../src/lib/acoustics/mounts/string-path.js';
import { cutOf } from '../../../src/lib/drawing/cut.js';
import { DEMO, ovalIn } from '../../helpers/demo-installations.js';
import { everyInstallation, shaken } from '../../helpers/random-installations.js';

test('the cut holds the string: direction and side give the way it leaves the cone', () => {
  for (const installation of everyInstallation())
    for (let seed = 1; seed <= 10; seed++) {
      const one = shaken(installation, seed);
      const string = stringPath(one);
      const { direction, side } = cutOf(one);
      expect(Math.hypot(...direction)).toBeCloseTo(1, 9);
      if (!string) continue;
      expect(direction[0] * side).toBeCloseTo(string.direction[0], 9);
      expect(direction[1] * side).toBeCloseTo(string.direction[1], 9);
    }
});

test('a long plate is cut across, a speaker near its end along', () => {
  expect(cutOf(DEMO['flat plate']).plane).toBe('across');
  const plate: Mount = { kind: 'plate', shape: 'rectangle', length: 0.15, width: 0.1, offset: [-0.05, 0] };
  expect(cutOf(ovalIn(plate))).toEqual({ plane: 'along', side: -1, direction: [1, -0] });
});
