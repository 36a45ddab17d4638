import { expect, test } from 'vitest';
import { besideLabel } from '../../../../src/lib/plot/labels/beside-label.js';
import { runMeetsBox } from '../../../../src/lib/plot/scales/run-meets-box.js';

const area = { left: 0, right: 1000, top: 0, bottom: 300 };
const xs = Array.from({ length: 101 }, (_, i) => 10 * i);
const NONE = { width: 0, height: 0 };
/** A flat line, and one that leaves it most at 400. */
const flat = [xs.map((x) => ({ x, y: 100 }))];
const bump = [xs.map((x) => ({ x, y: 100 + 80 * Math.exp(-(((x - 400) / 100) ** 2)) }))];

test('a name stands where two curves are farthest apart, on the far side', () => {
  expect(besideLabel(bump, flat, area, NONE)).toMatchObject({ x: 400, below: true });
  expect(besideLabel(flat, bump, area, NONE)).toMatchObject({ x: 400, y: 100, below: false });
});

test('it makes room for a disc, keeps off the sides, and is left out where there is nothing to stand beside', () => {
  const { x } = besideLabel(bump, flat, area, NONE, { discs: [{ x: 400, y: 180 }], clear: 60 })!;
  expect(Math.abs(x - 400)).toBeGreaterThanOrEqual(60);
  expect(Math.abs(x - 400)).toBeLessThan(90);
  const rising = [xs.map((x) => ({ x, y: 100 + x / 10 }))];
  expect(besideLabel(rising, flat, area, NONE)!.x).toBeLessThanOrEqual(860);
  expect(besideLabel(bump, [], area, NONE)).toBeNull();
});

test('a name that would be cut off stands elsewhere, or nowhere', () => {
  const low = { ...area, bottom: 190 };
  const { box } = besideLabel(bump, flat, low, { width: 80, height: 40 })!;
  expect(box.bottom).toBeLessThanOrEqual(190);
  expect(besideLabel(bump, flat, area, { width: 1100, height: 40 })).toBeNull();
});

test('at a steep curve a name stands aside, so that the curve does not go through it', () => {
  const room = { width: 80, height: 40 };
  const falling = [xs.map((x) => ({ x, y: 105 + 0.2 * x }))];
  const { x, y, box } = besideLabel(falling, flat, area, room)!;
  expect([x, y]).toEqual([730, 259]);
  expect(runMeetsBox(falling[0], { ...box, top: box.top + 6 })).toBe(false);
  // Where there is no such place it stands at the curve all the same.
  const comb = [xs.map((x) => ({ x, y: x % 20 ? 110 : 290 }))];
  expect(besideLabel(comb, flat, area, room)).not.toBeNull();
});

test('a name keeps off other words', () => {
  const room = { width: 80, height: 40 };
  const words = { left: 300, right: 500, top: 120, bottom: 260 };
  const { box } = besideLabel(bump, flat, area, room, { boxes: [words] })!;
  expect(box.right <= words.left || box.left >= words.right || box.bottom <= words.top).toBe(true);
});

test('a third curve does not go through a name', () => {
  const room = { width: 80, height: 40 };
  const third = xs.map((x) => ({ x, y: x < 420 ? 200 : 280 }));
  const { box } = besideLabel(bump, flat, area, room, { runs: [third] })!;
  expect(runMeetsBox(third, { ...box, top: box.top + 6 })).toBe(false);
});
