import { describe, expect, it } from 'vitest';
import { discPlaces } from '../../../../src/lib/plot/labels/disc-places.js';
import { heightsAlong } from '../../../../src/lib/plot/labels/heights-along.js';
import { pictureLayout } from '../../../../src/lib/plot/scales/picture-layout.js';
import { randomFamily } from '../random-family.js';

const layouts = [pictureLayout(1340, 320, false), pictureLayout(366, 200, false)];
const families = Array.from({ length: 200 }, (_, i) => i + 1);

describe.each(layouts)('discPlaces in a picture $width pixels wide', (layout) => {
  const { area, discRadius: radius } = layout;
  const all = families.map((seed) => {
    const curves = randomFamily(seed, layout);
    return { seed, curves, places: discPlaces(curves, area, { radius }) };
  });

  it('never lets discs overlap each other or leave the area, for any of 200 random families', () => {
    for (const { seed, places } of all) {
      const discs = [...places.values()];
      discs.forEach((a, i) => {
        expect(a.x - radius).toBeGreaterThanOrEqual(area.left);
        expect(a.x + radius).toBeLessThanOrEqual(area.right);
        expect(a.y - radius).toBeGreaterThanOrEqual(area.top);
        expect(a.y + radius).toBeLessThanOrEqual(area.bottom);
        for (const b of discs.slice(0, i))
          expect(Math.hypot(a.x - b.x, a.y - b.y), `family ${seed}`).toBeGreaterThan(2 * radius);
      });
    }
  });

  it('touches its own curve with every disc', () => {
    for (const { seed, curves, places } of all) {
      for (const [id, place] of places) {
        const [height] = heightsAlong(curves[id].runs, place.x, 1, 1);
        expect(Math.abs(height - place.y), `family ${seed}, curve ${id}`).toBeLessThanOrEqual(radius + 1);
      }
    }
  });

  it('gives a disc to every curve that is visible over a tenth of the width', () => {
    for (const { seed, curves, places } of all) {
      for (const curve of curves) {
        const seen = heightsAlong(curve.runs, area.left, 1, area.right - area.left).filter(
          (y) => y === y
        ).length;
        if (seen > 0.1 * (area.right - area.left) + 2 * radius)
          expect(places.has(curve.id), `family ${seed}, curve ${curve.id}`).toBe(true);
      }
    }
  });

  it('moves discs little when curves move little', () => {
    // In 10 steps of 0.1 dB curves move past each other by a pixel or less a step. A leap to a new place is allowed,
    // but must be rare: without the memory of the previous places it happens two to six times as often.
    let moves = 0;
    let leaps = 0;
    for (const { seed, places } of all.slice(0, 100)) {
      let previous = places;
      for (let step = 1; step <= 10; step++) {
        const next = discPlaces(randomFamily(seed, layout, 0.1 * step), area, { radius, previous });
        for (const [id, place] of next) {
          const before = previous.get(id);
          if (!before) continue;
          moves++;
          if (Math.hypot(place.x - before.x, place.y - before.y) > 12) leaps++;
        }
        previous = next;
      }
    }
    expect(leaps / moves).toBeLessThan(0.01);
  });

  it('stays where it is when nothing changes', () => {
    for (const { curves, places } of all) {
      const settled = discPlaces(curves, area, { radius, previous: places });
      expect(discPlaces(curves, area, { radius, previous: settled })).toEqual(settled);
    }
  });
});

describe('discPlaces', () => {
  const layout = layouts[0];
  it('sets the discs of curves that coincide side by side', () => {
    const [one] = randomFamily(3, layout);
    const same = [0, 1, 2, 3].map((id) => ({ ...one, id, heard: id === 2 }));
    expect(discPlaces(same, layout.area, { radius: layout.discRadius }).size).toBe(4);
  });
  it('gives no disc to a curve that is nowhere visible', () => {
    expect(discPlaces([{ id: 7, heard: true, runs: [] }], layout.area, { radius: 13 }).size).toBe(0);
  });
  it('gives no discs in an area too small for one', () => {
    const area = { left: 0, right: 20, top: 0, bottom: 20 };
    const runs = [
      [
        { x: 0, y: 10 },
        { x: 20, y: 10 }
      ]
    ];
    expect(discPlaces([{ id: 1, heard: true, runs }], area, { radius: 13 }).size).toBe(0);
  });
});
