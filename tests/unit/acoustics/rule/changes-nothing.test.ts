import { expect, test } from 'vitest';
import { changesNothing } from '../../../../src/lib/acoustics/rule/changes-nothing.js';
import { knobsOf, withKnob } from '../../../../src/lib/acoustics/mounts/size-knobs.js';
import { computedByRule } from '../../../helpers/by-rule.js';
import { AIR, DEMO, ovalIn } from '../../../helpers/demo-installations.js';

test('what is said to change nothing does not change the filter', () => {
  for (const installation of [...Object.values(DEMO), ovalIn({ ...shell, ends: 'open' })])
    for (const { key, value, min, max } of knobsOf(installation)) {
      const here = computedByRule(installation).impulseResponse;
      const filters = [value - 0.003, value + 0.003].map((to) => {
        const mount = withKnob(installation.mount, key, Math.min(max, Math.max(min, to)));
        return computedByRule({ ...installation, mount }).impulseResponse;
      });
      const same = filters.every((filter) => filter.every((tap, i) => tap === here[i]));
      expect(changesNothing(installation, key, AIR), `${installation.mount.kind} ${key}`).toBe(same);
    }
});

const shell = {
  kind: 'shell',
  length: 0.152,
  width: 0.033,
  height: 0.04,
  ends: 'closed',
  offset: 0
} as const;

test('the length of a long shell with closed ends changes nothing, its width and height do', () => {
  expect(changesNothing(ovalIn(shell), 'length', AIR)).toBe(true);
  expect(changesNothing(ovalIn(shell), 'width', AIR)).toBe(false);
  expect(changesNothing(ovalIn(shell), 'height', AIR)).toBe(false);
});
