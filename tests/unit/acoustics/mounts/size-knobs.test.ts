import { expect, test } from 'vitest';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { firstAt } from '../../../../src/lib/acoustics/mounts/second.js';
import { knobsOf, withKnob } from '../../../../src/lib/acoustics/mounts/size-knobs.js';
import { DEMO, ovalIn } from '../../../helpers/demo-installations.js';
import { everyInstallation, fits, shaken } from '../../../helpers/random-installations.js';

test('every place a knob can be turned to is a mount that can be built', () => {
  for (const installation of everyInstallation())
    for (const knob of knobsOf(installation))
      for (const share of [0, 0.31, 1]) {
        const value = knob.min + (knob.max - knob.min) * share;
        const turned = { ...installation, mount: withKnob(installation.mount, knob.key, value) };
        expect(fits(turned), `${installation.speaker.name}, ${knob.label} ${value}`).toBe(true);
      }
});

test('and so is every place that all knobs together can be turned to', () => {
  for (const installation of everyInstallation())
    for (let seed = 1; seed <= 20; seed++) expect(fits(shaken(installation, seed))).toBe(true);
});

test('a knob shows the size it turns, and turning one leaves the others', () => {
  for (const installation of everyInstallation())
    for (const { key, value, min, max } of knobsOf(installation)) {
      expect(min).toBeLessThanOrEqual(value);
      expect(max).toBeGreaterThanOrEqual(value);
      const to = (min + max) / 2;
      const after = knobsOf({ ...installation, mount: withKnob(installation.mount, key, to) });
      const before = knobsOf(installation);
      for (const knob of after)
        expect(knob.value).toBe(knob.key === key ? to : before.find((one) => one.key === knob.key)!.value);
    }
});

test('withKnob changes nothing of the mount it was given', () => {
  const { mount } = DEMO['flat plate'];
  const before = structuredClone(mount);
  withKnob(mount, 'offsetLength', 0.01);
  withKnob(mount, 'width', 0.05);
  expect(mount).toEqual(before);
});

test('a mount cannot be made smaller than the speaker’s rim', () => {
  const width = knobsOf(DEMO['flat plate']).find(({ key }) => key === 'width')!;
  expect(width.min).toBeCloseTo(0.028, 9);
  const across = knobsOf({ ...DEMO['flat plate'], turn: 90 }).find(({ key }) => key === 'width')!;
  expect(across.min).toBeCloseTo(0.04, 9);
});

test('a mount of a file that is larger or smaller than the knobs usually reach keeps its size', () => {
  const huge = ovalIn({ kind: 'plate', shape: 'rectangle', length: 1.2, width: 0.9, offset: [0, 0] });
  expect(knobsOf(huge).find(({ key }) => key === 'length')!.max).toBe(1.2);
  const tight = ovalIn({ kind: 'plate', shape: 'rectangle', length: 0.035, width: 0.023, offset: [0, 0] });
  expect(knobsOf(tight).find(({ key }) => key === 'length')!.min).toBe(0.035);
});

test('free air has no knobs; a box has its speaker in the middle until that is moved, and says nothing of it then', () => {
  expect(knobsOf(DEMO['free air'])).toEqual([]);
  const box = DEMO['closed box'].mount;
  expect(knobsOf(DEMO['closed box']).map(({ key }) => key)).toEqual([
    'depth',
    'width',
    'length',
    'offsetLength',
    'offsetWidth'
  ]);
  const moved = withKnob(withKnob(box, 'offsetLength', 0.001), 'offsetWidth', -0.0005);
  expect(moved).toEqual({ ...box, offset: [0.001, -0.0005] });
  expect(firstAt(moved)).toEqual([0.001, -0.0005]);
  // the rim stays between the walls: 40 × 28 mm
  const least = knobsOf({ ...DEMO['closed box'], mount: moved }).map(({ key, min }) => [key, min]);
  expect(Object.fromEntries(least)).toMatchObject({ length: 0.042, width: 0.029 });
  expect(withKnob(withKnob(moved, 'offsetLength', 0), 'offsetWidth', 0)).toEqual(box);
});

test('the rim of a round speaker needs no corner', () => {
  const round = { speaker: SPEAKERS['round-36'], mount: DEMO['round plate'].mount, turn: 0 as const };
  expect(knobsOf(round)[0].min).toBeCloseTo(0.036, 9);
  expect(knobsOf(DEMO['round plate'])[0].min).toBeCloseTo(0.049, 9); // √(28² + 40²) = 48.8, to whole millimetres
});
