import { expect, test } from 'vitest';
import type { Installation } from '../../../../src/lib/acoustics/installation.js';
import { checkInstallation } from '../../../../src/lib/acoustics/mounts/check-installation.js';
import {
  isSecondKey,
  secondKnobs,
  usualSecond,
  withSecondKnob
} from '../../../../src/lib/acoustics/mounts/second-knobs.js';
import type { Mount } from '../../../../src/lib/acoustics/mounts/mount.js';
import { reachOfKnobs } from '../../../../src/lib/acoustics/mounts/reach-of-knobs.js';
import { knobsOf, withKnob } from '../../../../src/lib/acoustics/mounts/size-knobs.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { DEMO, ovalIn } from '../../../helpers/demo-installations.js';

const BOX: Mount = { kind: 'box', length: 0.14, width: 0.03, depth: 0.02 };

test.each<[string, Installation, [number, number] | null]>([
  ['on a plate beside the first', DEMO['flat plate'], [0.041, 0]],
  [
    'on a narrow plate mirrored',
    ovalIn({ kind: 'plate', shape: 'rectangle', length: 0.12, width: 0.04, offset: [0.03, 0] }),
    [-0.011, 0]
  ],
  ['in a shell along it', DEMO['cab body'], [0.041, 0]],
  ['in a long box', ovalIn(BOX), [0.041, 0]],
  ['not in a small one', DEMO['closed box'], null],
  ['not in free air', DEMO['free air'], null],
  [
    'across, where the length has no room',
    ovalIn({ kind: 'plate', shape: 'rectangle', length: 0.05, width: 0.1, offset: [0, -0.02] }),
    [0, 0.009]
  ]
])('a second speaker is offered %s', (_, installation, at) => {
  const second = usualSecond(installation);
  expect(second?.at ?? null).toEqual(at);
  if (second) expect(() => checkInstallation({ ...installation, second })).not.toThrow();
});

test('its knobs keep its cone on plate, roof or front; turning one leaves the other', () => {
  for (const one of [DEMO['flat plate'], DEMO['cab body'], ovalIn(BOX)]) {
    const second = usualSecond(one)!;
    const knobs = secondKnobs({ ...one, second });
    expect(knobs.map(({ key }) => key)).toEqual(['second.along', 'second.across']);
    for (const { key, max, value } of knobs) {
      expect(isSecondKey(key)).toBe(true);
      const there = withSecondKnob(second, key, max);
      expect(there.at.filter((place, i) => place !== second.at[i]).length).toBeLessThanOrEqual(1);
      expect(value).toBe(second.at[key === 'second.along' ? 0 : 1]);
      const cone = { ...one, second: there };
      // a shell of closed ends wants the whole frame inside
      if (one.mount.kind !== 'shell') expect(() => checkInstallation(cone)).not.toThrow();
    }
  }
});

test('where there is no second speaker there is no knob for it', () => {
  expect(secondKnobs(DEMO['flat plate'])).toEqual([]);
  expect(secondKnobs({ ...DEMO['free air'], speaker: SPEAKERS.oval })).toEqual([]);
});

test('no size of the mount can be turned to where the second speaker hangs over', () => {
  for (const one of [DEMO['flat plate'], DEMO['round plate'], DEMO['cab body'], ovalIn(BOX)]) {
    const second = usualSecond(one)!;
    const both = { ...one, second };
    for (const { key, min, max } of knobsOf(both).filter(({ key }) => !key.startsWith('offset')))
      for (const value of [min, max])
        expect(
          () => checkInstallation({ ...both, mount: withKnob(both.mount, key, value) }),
          `${one.mount.kind} ${key} ${value}`
        ).not.toThrow();
    for (const probe of reachOfKnobs(both)) expect(() => checkInstallation(probe)).not.toThrow();
  }
});
