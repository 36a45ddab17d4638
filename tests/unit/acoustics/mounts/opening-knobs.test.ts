import { expect, test } from 'vitest';
import type { Installation } from '../../../../src/lib/acoustics/installation.js';
import { everyKnob } from '../../../../src/lib/acoustics/mounts/every-knob.js';
import {
  isOpeningKey,
  openingKnobs,
  withOpeningKnob
} from '../../../../src/lib/acoustics/mounts/opening-knobs.js';
import { isSecondKey } from '../../../../src/lib/acoustics/mounts/second-knobs.js';
import { reachOfKnobs } from '../../../../src/lib/acoustics/mounts/reach-of-knobs.js';
import { knobsOf, withKnob } from '../../../../src/lib/acoustics/mounts/size-knobs.js';
import {
  additionsOf,
  kindOf,
  withAddition,
  withoutOpening
} from '../../../../src/lib/acoustics/mounts/usual-openings.js';
import { DEMO } from '../../../helpers/demo-installations.js';
import { everyInstallation, fits } from '../../../helpers/random-installations.js';

const bare = [...Object.values(DEMO), ...everyInstallation()];
/** Each mount with each thing that it can have, and with all that it can have together. */
const open: Installation[] = bare.flatMap((one) => {
  const additions = additionsOf(one.mount);
  const all = additions.reduce((so, addition) => ({ ...so, mount: withAddition(so, addition) }), one);
  return [...additions.map((addition) => ({ ...one, mount: withAddition(one, addition) })), all];
});

test('what is offered can be had, and is offered no more; taken out, the mount is as it was', () => {
  for (const one of bare)
    for (const addition of additionsOf(one.mount)) {
      const mount = withAddition(one, addition);
      expect(fits({ ...one, mount }), `${one.speaker.name}, ${mount.kind}, ${addition}`).toBe(true);
      expect(additionsOf(mount)).not.toContain(addition);
      expect(withoutOpening(mount, kindOf(addition))).toEqual(one.mount);
    }
  expect(additionsOf({ kind: 'free' })).toEqual(['grille']);
});

test('a mount without openings has no such knobs', () => {
  for (const one of bare) expect(openingKnobs(one)).toEqual([]);
});

test('every place a knob can be turned to is a mount that can be built, its own sizes too', () => {
  for (const one of open)
    for (const { key, label, min, max } of everyKnob(one))
      for (const share of [0, 0.37, 1]) {
        const value =
          key === 'grille.holes' ? Math.floor(min + (max - min) * share) : min + (max - min) * share;
        if (key === 'above' || isSecondKey(key)) continue;
        const mount = isOpeningKey(key)
          ? withOpeningKnob(one.mount, key, value)
          : withKnob(one.mount, key, value);
        expect(fits({ ...one, mount }), `${one.speaker.name}, ${one.mount.kind}, ${label} ${value}`).toBe(
          true
        );
      }
});

test('a knob shows what it turns, and turning one leaves the others', () => {
  for (const one of open)
    for (const { key, value, min, max } of openingKnobs(one)) {
      expect(min).toBeLessThanOrEqual(value);
      expect(max).toBeGreaterThanOrEqual(value);
      const to = key === 'grille.holes' ? min : (min + max) / 2;
      const after = { ...one, mount: withOpeningKnob(one.mount, key, to) };
      for (const knob of openingKnobs(after))
        expect(knob.value).toBe(
          knob.key === key ? to : openingKnobs(one).find((same) => same.key === knob.key)!.value
        );
      expect(knobsOf(after).map(({ value }) => value)).toEqual(knobsOf(one).map(({ value }) => value));
    }
});

test('what the headroom is found for can be built with its openings', () => {
  for (const one of open)
    for (const probe of reachOfKnobs(one)) expect(fits(probe), JSON.stringify(probe.mount)).toBe(true);
});
