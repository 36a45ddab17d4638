import { expect, test } from 'vitest';
import type { Mount } from '../../../src/lib/acoustics/mounts/mount.js';
import { additionsOf, withAddition } from '../../../src/lib/acoustics/mounts/usual-openings.js';
import { stringPath } from '../../../src/lib/acoustics/mounts/string-path.js';
import { sectionOf } from '../../../src/lib/drawing/section.js';
import { everyKnob } from '../../../src/lib/acoustics/mounts/every-knob.js';
import {
  isOpeningKey,
  type OpeningKey,
  withOpeningKnob
} from '../../../src/lib/acoustics/mounts/opening-knobs.js';
import { type SizeKey, withKnob } from '../../../src/lib/acoustics/mounts/size-knobs.js';
import { DEMO } from '../../helpers/demo-installations.js';
import { everyInstallation, shaken } from '../../helpers/random-installations.js';

const all = [
  ...Object.values(DEMO),
  ...everyInstallation().flatMap((one) => [1, 2, 3].map((seed) => shaken(one, seed)))
];

/** Every mount with everything that it can have. */
const withAdditions = all.flatMap((one) =>
  additionsOf(one.mount).map((addition) => ({ ...one, mount: withAddition(one, addition) }))
);

function turnedTo(mount: Mount, key: SizeKey | OpeningKey, value: number): Mount {
  return isOpeningKey(key) ? withOpeningKnob(mount, key, value) : withKnob(mount, key, value);
}

/** The points that a path goes through. */
function points(path: string): [number, number][] {
  return [...path.matchAll(/(-?[\d.]+)[ ,](-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
}

test('a handle lies where its drag says: dragged along, it stays under the hand', () => {
  for (const installation of [...all, ...withAdditions]) {
    const { handles, cut } = sectionOf(installation);
    for (const { key, at, axis, gain } of handles) {
      const knob = everyKnob(installation).find((one) => one.key === key);
      expect(knob, `${key} has a knob`).toBeDefined();
      const by = 0.001;
      if (knob!.value + by > knob!.max) continue;
      const turned = { ...installation, mount: turnedTo(installation.mount, key, knob!.value + by) };
      const after = sectionOf(turned);
      if (after.cut.plane !== cut.plane || after.cut.side !== cut.side) continue;
      const same = after.handles.find((one) => one.key === key && Math.sign(one.gain) === Math.sign(gain))!;
      const moved = axis === 'x' ? same.at[0] - at[0] : same.at[1] - at[1];
      expect(moved * gain, `${installation.mount.kind} ${key}`).toBeCloseTo(by * 1000, 6);
    }
  }
});

test('every size of the section’s plane can be taken hold of', () => {
  for (const installation of all) {
    const keys = new Set(sectionOf(installation).handles.map(({ key }) => key));
    const { kind } = installation.mount;
    expect(keys.size).toBe({ free: 0, plate: 1, shell: 2, box: 2 }[kind]);
  }
});

test('walls and speaker lie within the bounds', () => {
  for (const installation of all) {
    const { walls, speaker, bounds } = sectionOf(installation);
    for (const [x, y] of [...points(walls), ...points(speaker.frame)]) {
      expect(x).toBeGreaterThanOrEqual(bounds.left - 0.02);
      expect(x).toBeLessThanOrEqual(bounds.right + 0.02);
      expect(y).toBeGreaterThanOrEqual(bounds.top - 0.02);
      expect(y).toBeLessThanOrEqual(bounds.bottom + 0.02);
    }
  }
});

test('the drawn string goes round the edge that the computed one goes round', () => {
  for (const installation of all) {
    const { string, cut, bounds } = sectionOf(installation);
    if (!stringPath(installation)) {
      expect(string).toBeNull();
      continue;
    }
    const xs = points(string!).map(([x]) => x);
    const edges = points(sectionOf(installation).walls).map(([x]) => x);
    // Free air has no walls: its edge is the frame's.
    const [left, right] = edges.length
      ? [Math.min(...edges), Math.max(...edges)]
      : [bounds.left, bounds.right];
    const beyond = cut.side > 0 ? Math.max(...xs) - right : left - Math.min(...xs);
    const other = cut.side > 0 ? Math.min(...xs) - left : right - Math.max(...xs);
    // Round the edge on its side by a little, and not round the other one.
    expect(beyond).toBeGreaterThan(0);
    expect(other).toBeGreaterThanOrEqual(0);
  }
});

test('an off-centre speaker is drawn off the middle, on the side of the nearer edge', () => {
  const plate: Mount = { kind: 'plate', shape: 'rectangle', length: 0.15, width: 0.1, offset: [0, 0.02] };
  const { speaker, cut } = sectionOf({ ...DEMO['flat plate'], mount: plate });
  const xs = points(speaker.frame).map(([x]) => x);
  expect(cut.side).toBe(1);
  expect((Math.min(...xs) + Math.max(...xs)) / 2).toBeCloseTo(20, 6);
});
