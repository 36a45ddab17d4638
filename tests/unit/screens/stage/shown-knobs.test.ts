import { expect, test } from 'vitest';
import type { BoxMount } from '../../../../src/lib/acoustics/mounts/mount.js';
import { knobsOf } from '../../../../src/lib/acoustics/mounts/size-knobs.js';
import { shownKnobs } from '../../../../src/lib/screens/stage/shown-knobs.js';
import { DEMO } from '../../../helpers/demo-installations.js';

const box = DEMO['closed box'];
const shown = (part: Partial<BoxMount>): string[] =>
  shownKnobs(knobsOf({ ...box, mount: { ...(box.mount as BoxMount), ...part } })).map(({ key }) => key);

test('where the speaker is has fields where there is room to move it, and where it was moved', () => {
  const sides = ['depth', 'width', 'length'];
  // The box of the demo bench is 1 mm longer at either end than the speaker, and half a millimetre wider.
  expect(shown({})).toEqual(sides);
  expect(shown({ offset: [0.0005, 0] })).toEqual([...sides, 'offsetLength']);
  expect(shown({ length: 0.06 })).toEqual([...sides, 'offsetLength']);
  expect(shown({ length: 0.06, width: 0.04 })).toEqual([...sides, 'offsetLength', 'offsetWidth']);
});
