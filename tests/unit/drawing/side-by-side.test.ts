import fc from 'fast-check';
import { expect, test } from 'vitest';
import { partsOf, sideBySide } from '../../../src/lib/drawing/side-by-side.js';
import { close } from '../../helpers/close.js';

const exact = { abs: 1e-6, because: 'sums of widths' };

test('what is narrower than its column stands in its middle', () => {
  expect(sideBySide([50, 80, 60], 300, 10)).toEqual([50, 150, 250]);
  expect(sideBySide([], 300, 10)).toEqual([]);
});

test('what is wider pushes its neighbours, alike where they can', () => {
  const [a, b, c] = sideBySide([40, 180, 40], 300, 10);
  close(b, 150, exact);
  close(a, 150 - 90 - 10 - 20, exact);
  close(c, 300 - a, exact);
});

test('nothing touches and nothing leaves the row, whatever the widths', () => {
  const row = fc.record({
    widths: fc.array(fc.double({ min: 1, max: 300, noNaN: true }), { minLength: 1, maxLength: 6 }),
    gap: fc.double({ min: 0, max: 20, noNaN: true }),
    spare: fc.double({ min: 0, max: 500, noNaN: true })
  });
  fc.assert(
    fc.property(row, ({ widths, gap, spare }) => {
      const total = widths.reduce((sum, width) => sum + width, 0) + gap * (widths.length - 1) + spare;
      const middles = sideBySide(widths, total, gap);
      expect(middles[0] - widths[0] / 2).toBeGreaterThan(-1e-6);
      expect(middles.at(-1)! + widths.at(-1)! / 2).toBeLessThan(total + 1e-6);
      for (let i = 1; i < widths.length; i++)
        expect(middles[i] - middles[i - 1]).toBeGreaterThan((widths[i] + widths[i - 1]) / 2 + gap - 1e-6);
    })
  );
});

test('where the room does not suffice they fill the row from edge to edge', () => {
  const middles = sideBySide([100, 100, 100], 240, 10);
  close(middles[0], 50, exact);
  close(middles[2], 190, exact);
});

test('the parts of a row meet between neighbours, and each holds what stands in it, wider than its column or not', () => {
  const widths = [40, 180, 40];
  const middles = sideBySide(widths, 300, 10);
  const parts = partsOf(middles, widths, 300);
  expect([parts[0].from, parts[2].to]).toEqual([0, 300]);
  for (const [i, { from, to }] of parts.entries()) {
    expect(from).toBeLessThanOrEqual(middles[i] - widths[i] / 2);
    expect(to).toBeGreaterThanOrEqual(middles[i] + widths[i] / 2);
    if (i > 0) expect(from).toBe(parts[i - 1].to);
  }
  expect(partsOf([], [], 300)).toEqual([]);
});
