import { describe, expect, it } from 'vitest';
import { outlineLength, outlineWidth } from '../../../src/lib/acoustics/outline.js';
import type { Speaker } from '../../../src/lib/acoustics/speaker/speaker.js';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { atOnce, fittingSteps } from '../../../src/lib/fitting/fit.js';
import { narrowing, obstacleBlock, type Vehicle } from '../../../src/lib/fitting/vehicle.js';
import type { Way } from '../../../src/lib/fitting/ways.js';
import { randomVehicles } from './random-vehicles.js';

/** In whole millimetres: 18 × 13 and 35 × 16 mm. */
const DRAWER: Record<string, Speaker> = {
  phone: { ...SPEAKERS['phone-13x18'], depth: 0.005 },
  oval: { ...SPEAKERS['oval-16x35'], depth: 0.01 }
};
const VEHICLES = randomVehicles(10, 23);
const um = (metres: number) => Math.round(metres * 1e6);

/** Every place on a lattice of half a millimetre at which a thing so large lies free against roof or floor; lower left corners. */
function placesOf(vehicle: Vehicle, way: Way, [long, wide, high]: number[]): [number, number][] {
  const stretch = way.startsWith('roof')
    ? vehicle.roof
    : way === 'box up'
      ? [0, vehicle.length]
      : vehicle.floor;
  if (!stretch || (way === 'box up' && vehicle.openings === 0)) return [];
  const floor = um(vehicle.chassis?.height ?? 0);
  const [low, top] = way.startsWith('roof')
    ? [um(vehicle.height) - high, um(vehicle.height)]
    : [floor, floor + high];
  if (low < floor || top > um(vehicle.height)) return [];
  const half = um(Math.max(vehicle.width, vehicle.cab?.width ?? 0)) / 2;
  const solid = [...vehicle.obstacles.map(obstacleBlock), ...narrowing(vehicle)]
    .map(({ x, y, z }) => [x, y, z].map((span) => span.map(um)))
    .filter(([, , z]) => low < z[1] && top > z[0]);
  const found: [number, number][] = [];
  for (let x = um(stretch[0]); x + long <= um(stretch[1]); x += 500)
    for (let y = -half; y + wide <= half; y += 500)
      if (solid.every(([sx, sy]) => x >= sx[1] || x + long <= sx[0] || y >= sy[1] || y + wide <= sy[0]))
        found.push([x, y]);
  return found;
}

describe('every size of a box', () => {
  it('that a slow search finds room for lies on or below the end of a ladder of that speaker and way, and no other does', () => {
    let [fits, fitsNot] = [0, 0];
    for (const vehicle of VEHICLES) {
      const { candidates, ladders } = atOnce(fittingSteps(vehicle, DRAWER));
      const byKey = new Map(candidates.map((one) => [one.key, one]));
      const ends = [...ladders.map((keys) => keys.at(-1)!), ...byKey.keys()].map((key) => byKey.get(key)!);
      for (const [key, speaker] of Object.entries(DRAWER))
        for (const way of ['roof box', 'box up', 'box down'] as const) {
          const largest = ends
            .filter((one) => one.speaker === key && one.way === way && !one.second)
            .map(({ mount }) =>
              mount.kind === 'box' ? [mount.length, mount.width, mount.depth].map(um) : []
            );
          const [a, b] = [um(outlineLength(speaker.frame)), um(outlineWidth(speaker.frame))];
          for (let long = Math.min(a, b); long <= um(vehicle.length); long += 9000)
            for (let wide = Math.min(a, b); wide <= um(vehicle.width); wide += 5000)
              for (let deep = um(speaker.depth); deep <= um(vehicle.height); deep += 7000) {
                // a frame lies in it along or across
                if (!((long >= a && wide >= b) || (long >= b && wide >= a))) continue;
                const outside = [long + 2000, wide + 2000, deep + 1000 + (way === 'box up' ? 1000 : 0)];
                const found = placesOf(vehicle, way, outside).length > 0;
                expect([way, key, long, wide, deep, found]).toEqual([
                  ...[way, key, long, wide, deep],
                  largest.some(([l, w, d]) => long <= l && wide <= w && deep <= d)
                ]);
                if (found) fits++;
                else fitsNot++;
              }
        }
    }
    expect(fits).toBeGreaterThan(100);
    expect(fitsNot).toBeGreaterThan(100);
  });
});

describe('two of a kind', () => {
  it('are in floor or box wherever a slow search finds room for both, and nowhere else', () => {
    const counts = { floor: [0, 0], 'box down': [0, 0], 'roof box': [0, 0] };
    for (const vehicle of randomVehicles(24, 29)) {
      const { candidates } = atOnce(fittingSteps(vehicle, DRAWER));
      for (const [key, speaker] of Object.entries(DRAWER)) {
        const [a, b] = [um(outlineLength(speaker.frame)), um(outlineWidth(speaker.frame))];
        const deep = um(speaker.depth);
        const has = (way: Way) =>
          candidates.some((one) => one.speaker === key && one.way === way && one.second);
        const inFloor = [
          [a, b],
          [b, a]
        ].some(([long, wide]) => {
          const places = placesOf(vehicle, 'floor', [long, wide, deep]);
          const reach = (axis: 0 | 1) =>
            Math.max(...places.map((place) => place[axis])) - Math.min(...places.map((place) => place[axis]));
          return places.length > 1 && (reach(0) >= long || reach(1) >= wide);
        });
        const inBox = (way: Way) =>
          [
            [2 * a, b],
            [2 * b, a],
            [a, 2 * b],
            [b, 2 * a]
          ].some(
            ([long, wide]) => placesOf(vehicle, way, [long + 2000, wide + 2000, deep + 1000]).length > 0
          );
        for (const way of ['floor', 'box down', 'roof box'] as const) {
          const found = way === 'floor' ? inFloor : inBox(way);
          expect([way, key, vehicle, has(way)]).toEqual([way, key, vehicle, found]);
          counts[way][found ? 1 : 0]++;
        }
      }
    }
    for (const count of Object.values(counts)) expect(Math.min(...count)).toBeGreaterThan(3);
  });
});
