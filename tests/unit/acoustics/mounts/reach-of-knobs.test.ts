import { expect, test } from 'vitest';
import type { Mount } from '../../../../src/lib/acoustics/mounts/mount.js';
import { knobsOf } from '../../../../src/lib/acoustics/mounts/size-knobs.js';
import { reachOfKnobs } from '../../../../src/lib/acoustics/mounts/reach-of-knobs.js';
import { DEMO } from '../../../helpers/demo-installations.js';
import { everyInstallation, fits } from '../../../helpers/random-installations.js';

test('every probe can be built', () => {
  for (const installation of everyInstallation())
    for (const probe of reachOfKnobs(installation)) expect(fits(probe)).toBe(true);
});

test('the probes run from the least sizes to the largest, the speaker in the middle', () => {
  for (const installation of everyInstallation()) {
    const probes = reachOfKnobs(installation);
    const [first, last] = [knobsOf(probes[0]), knobsOf(probes.at(-1)!)];
    for (const [i, knob] of first.entries()) {
      if (knob.key.startsWith('offset')) expect(knob.value).toBe(0);
      else {
        expect(knob.value).toBeCloseTo(knob.min, 9);
        expect(last[i].value).toBeCloseTo(last[i].max, 9);
      }
    }
  }
});

test('they do not depend on where the knobs stand: the gain stays while one is turned', () => {
  const here = DEMO['flat plate'];
  const mount: Mount = {
    kind: 'plate',
    shape: 'rectangle',
    length: 0.09,
    width: 0.05,
    offset: [0.01, 0.004]
  };
  const there = { ...here, mount };
  expect(reachOfKnobs(there)).toEqual(reachOfKnobs(here));
});

test('free air has only itself', () => {
  expect(reachOfKnobs(DEMO['free air'])).toEqual([DEMO['free air']]);
});

test('over a board they can stand, a box low and what is open high, wherever the knob stands', () => {
  for (const installation of everyInstallation())
    for (const facing of ['up', 'down'] as const) {
      const [low, high] = [0.03, 0.08].map((above) =>
        reachOfKnobs({ ...installation, board: { above, facing } })
      );
      expect(low).toEqual(high);
      for (const probe of low) {
        expect(fits(probe)).toBe(true);
        expect(probe.board!.above).toBe(probe.mount.kind === 'box' ? 0.001 : 0.1);
      }
    }
});
