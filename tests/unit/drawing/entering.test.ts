import { expect, test } from 'vitest';
import { entering } from '../../../src/lib/drawing/entering.js';
import { sectionOf } from '../../../src/lib/drawing/section.js';
import { knobsOf } from '../../../src/lib/acoustics/mounts/size-knobs.js';
import { everyInstallation, fits, shaken } from '../../helpers/random-installations.js';

const all = everyInstallation().flatMap((one) => [one, ...[1, 2].map((seed) => shaken(one, seed))]);

test('at 1 it is what it is', () => {
  for (const installation of all) expect(entering(installation, 1)).toBe(installation);
});

test('it grows all the way, from the speaker’s rim, and can be drawn at every share', () => {
  for (const installation of all) {
    let before: number[] | null = null;
    for (const share of [0, 0.25, 0.5, 0.75, 0.999]) {
      const one = entering(installation, share);
      expect(fits(one)).toBe(true);
      expect(sectionOf(one).walls).not.toContain('NaN');
      const sizes = knobsOf(one).flatMap(({ key, value }) => (key.startsWith('offset') ? [] : [value]));
      if (before)
        for (const [i, value] of sizes.entries()) expect(value).toBeGreaterThanOrEqual(before[i] - 1e-12);
      before = sizes;
    }
  }
});

test('the speaker stays where it is in its mount', () => {
  for (const installation of all) {
    const offsets = (one: typeof installation) =>
      knobsOf(one).flatMap(({ key, value }) => (key.startsWith('offset') ? [value] : []));
    expect(offsets(entering(installation, 0.3))).toEqual(offsets(installation));
  }
});
