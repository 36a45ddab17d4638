import { expect, test } from 'vitest';
import type { Installation } from '../../../src/lib/acoustics/installation.js';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { smallChanges } from '../../../src/lib/fitting/small-changes.js';
import { close } from '../../helpers/close.js';

/** The oval is 40 × 28 mm. */
const speaker = SPEAKERS.oval;
const BOX: Installation = {
  speaker,
  mount: { kind: 'box', length: 0.042, width: 0.03, depth: 0.02 },
  turn: 0,
  board: { above: 0.02, facing: 'up' }
};
const changesOf = (installation: Installation) =>
  Object.fromEntries(smallChanges(installation).map(({ name, installation: changed }) => [name, changed]));

test('each size of a box is 1 mm larger, it stands 1 mm higher, and its rim leaks by 0.1 mm: one at a time', () => {
  const changes = changesOf(BOX);
  expect(Object.keys(changes)).toEqual([
    'length',
    'width',
    'depth',
    'over the board',
    'gap',
    'resonance up',
    'resonance down'
  ]);
  const { mount } = BOX;
  expect(changes.length).toEqual({ ...BOX, mount: { ...mount, length: expect.closeTo(0.043, 12) } });
  expect(changes.width).toEqual({ ...BOX, mount: { ...mount, width: expect.closeTo(0.031, 12) } });
  expect(changes.depth).toEqual({ ...BOX, mount: { ...mount, depth: expect.closeTo(0.021, 12) } });
  expect(changes['over the board']).toEqual({
    ...BOX,
    board: { above: expect.closeTo(0.021, 12), facing: 'up' }
  });
  // round the frame: 2 · (40 + 28) mm
  expect(changes.gap).toEqual({
    ...BOX,
    mount: { ...mount, leak: { gap: 0.0001, length: expect.closeTo(0.136, 12), depth: 0.002 } }
  });
});

test('the resonance is 15 % higher and lower', () => {
  const resonance = ({ speaker: { motor } }: Installation) =>
    1 / (2 * Math.PI * Math.sqrt(motor.mms * motor.cms));
  const changes = changesOf(BOX);
  const because = 'f = 1/(2π·√(Mms·Cms))';
  close(resonance(changes['resonance up']) / resonance(BOX), 1.15, { rel: 1e-12, because });
  close(resonance(changes['resonance down']) / resonance(BOX), 0.85, { rel: 1e-12, because });
});

test('a speaker in a shell is 1 mm nearer to the middle; what cannot be built is left out', () => {
  const shell = { kind: 'shell', length: 0.152, width: 0.03, height: 0.045, ends: 'closed' } as const;
  const at = (offset: number) => changesOf({ speaker, mount: { ...shell, offset }, turn: 0 });
  expect(at(0.02).place.mount).toMatchObject({ offset: expect.closeTo(0.019, 12) });
  expect(at(-0.02).place.mount).toMatchObject({ offset: expect.closeTo(-0.019, 12) });
  // in the hand nothing is below
  expect(at(0.02)['over the board']).toBeUndefined();
  // sides of boxes end at 3 m
  const longest = changesOf({
    speaker,
    mount: { kind: 'box', length: 3, width: 0.03, depth: 0.02 },
    turn: 0
  });
  expect(longest.length).toBeUndefined();
  expect(longest.width).toBeDefined();
});

test('what leaks already gets no other gap, and free air has none', () => {
  const leak = { hole: 0.001, depth: 0.001 };
  expect(changesOf({ ...BOX, mount: { ...BOX.mount, leak } }).gap).toBeUndefined();
  expect(Object.keys(changesOf({ speaker, mount: { kind: 'free' }, turn: 0 }))).toEqual([
    'resonance up',
    'resonance down'
  ]);
});
