import fc from 'fast-check';
import { expect, test } from 'vitest';
import { alongEdge } from '../../../../src/lib/screens/speaker/along-edge.js';

test('letters stand apart, within the drawing and in the order of their parts, so that no leaders cross', () => {
  const places = fc.array(fc.double({ min: 0, max: 360, noNaN: true }), { minLength: 1, maxLength: 9 });
  fc.assert(
    fc.property(places, (xs) => {
      const leaders = alongEdge(
        xs.map((x, i) => ({ field: i, to: [x, 50] as [number, number] })),
        360,
        11
      );
      leaders.forEach(({ from: [x, y], to }, i) => {
        expect(y).toBe(11);
        expect(x).toBeGreaterThanOrEqual(13 - 1e-9);
        expect(x).toBeLessThanOrEqual(347 + 1e-9);
        if (i === 0) return;
        expect(x - leaders[i - 1].from[0]).toBeGreaterThanOrEqual(26 - 1e-9);
        expect(to[0]).toBeGreaterThanOrEqual(leaders[i - 1].to[0]);
      });
    })
  );
});

test('one that has room stands straight above its part', () => {
  const [{ from }] = alongEdge([{ field: 'A', to: [200, 50] }], 360, 11);
  expect(from).toEqual([200, 11]);
});
