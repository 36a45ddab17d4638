import { describe, expect, it, test } from 'vitest';
import { outlineLength, outlineWidth } from '../../../src/lib/acoustics/outline.js';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import type { Speaker } from '../../../src/lib/acoustics/speaker/speaker.js';
import { checkInstallation } from '../../../src/lib/acoustics/mounts/check-installation.js';
import { contains, overlap, type Block } from '../../../src/lib/fitting/block.js';
import { installed } from '../../../src/lib/fitting/candidate.js';
import { atOnce, fit, fittingSteps } from '../../../src/lib/fitting/fit.js';
import { largestBlocks, roomInside } from '../../../src/lib/fitting/room-inside.js';
import { narrowing, obstacleBlock, type Vehicle } from '../../../src/lib/fitting/vehicle.js';
import { WAYS, type Way } from '../../../src/lib/fitting/ways.js';
import { DEMO_MODELS } from '../../../src/lib/file/demo-vehicles.js';
import { randomVehicles } from './random-vehicles.js';

/** What fits, without the reasons of what does not. */
const whatFits = (vehicle: Vehicle, drawer: Record<string, Speaker> = WHOLE) =>
  atOnce(fittingSteps(vehicle, drawer));

/** Speakers of whole millimetres, so that what fits anywhere fits on a lattice of one. */
const WHOLE: Record<string, Speaker> = Object.fromEntries(
  ['oval', 'oval-16x35', 'phone-13x18', 'round-23'].map((key) => [
    key,
    { ...SPEAKERS[key], depth: Math.round(SPEAKERS[key].depth * 1000) / 1000 }
  ])
);
WHOLE['phone-13x18'] = { ...WHOLE['phone-13x18'], depth: 0.005 };

const solidOf = (vehicle: Vehicle): Block[] => [
  ...vehicle.obstacles.map(obstacleBlock),
  ...narrowing(vehicle)
];

/** A slow search that shares nothing with the rooms: every place on a lattice of half a millimetre. */
function fitsSomewhere(vehicle: Vehicle, speaker: Speaker, way: Way): boolean {
  const stretch = {
    roof: vehicle.roof,
    'roof box': vehicle.roof,
    floor: vehicle.floor,
    'box down': vehicle.floor,
    'box up': [0, vehicle.length] as const
  }[way];
  if (!stretch || (way === 'box up' && vehicle.openings === 0)) return false;
  const boxed = way.includes('box');
  const wide = Math.max(vehicle.width, vehicle.cab?.width ?? 0);
  const floor = vehicle.chassis?.height ?? 0;
  const solid = solidOf(vehicle).map(({ x, y, z }) =>
    [x, y, z].map((span) => span.map((side) => Math.round(side * 1e6)))
  );
  const um = (metres: number) => Math.round(metres * 1e6);
  const sizes = [outlineLength(speaker.frame), outlineWidth(speaker.frame)].map(
    (side) => um(side) + (boxed ? 2000 : 0)
  );
  const high = um(speaker.depth) + (boxed ? 1000 : 0) + (way === 'box up' ? 1000 : 0);
  const [low, top] = way.startsWith('roof')
    ? [um(vehicle.height) - high, um(vehicle.height)]
    : [um(floor), um(floor) + high];
  if (low < um(floor) || top > um(vehicle.height)) return false;
  for (const [long, across] of [sizes, [...sizes].reverse()])
    for (let x = um(stretch[0]); x + long <= um(stretch[1]); x += 500) {
      const [from, until] =
        way === 'roof' ? [-across / 2, -across / 2] : [-um(wide) / 2, um(wide) / 2 - across];
      for (let y = from; y <= until; y += 500) {
        if (y < -um(wide) / 2 || y + across > um(wide) / 2) continue;
        const free = solid.every(
          ([sx, sy, sz]) =>
            x >= sx[1] ||
            x + long <= sx[0] ||
            y >= sy[1] ||
            y + across <= sy[0] ||
            low >= sz[1] ||
            top <= sz[0]
        );
        if (free) return true;
      }
    }
  return false;
}

describe('random vehicles', () => {
  const vehicles = randomVehicles(60, 15);

  it('nothing that fits is missed, and nothing fits that a slow search on a grid does not find', () => {
    let found = 0;
    for (const vehicle of vehicles) {
      const { candidates, misfits } = fit(vehicle, WHOLE);
      for (const [key, speaker] of Object.entries(WHOLE))
        for (const way of WAYS) {
          const has = candidates.some((one) => one.speaker === key && one.way === way);
          const misfit = misfits.find((one) => one.speaker === key && one.way === way);
          expect(has).toBe(!misfit);
          // a mount that has room and that no model can build says so in the model's words
          const refused = misfit && /magnet touches|fills the (box|space)|cone \(/.test(misfit.why);
          if (!refused) expect([way, key, has]).toEqual([way, key, fitsSomewhere(vehicle, speaker, way)]);
          if (has) found++;
        }
    }
    // the cases are no empty ones
    expect(found).toBeGreaterThan(200);
  });

  it('no candidate overlaps what stands in the way, another speaker, the chassis or the body, nor what may not be cut', () => {
    for (const vehicle of vehicles) {
      const solid = solidOf(vehicle);
      const { whole } = roomInside(vehicle);
      for (const { takes, way, mount } of whatFits(vehicle).candidates) {
        takes.forEach((block, i) => {
          expect(contains(whole, block)).toBe(true);
          expect(solid.filter((other) => overlap(other, block))).toEqual([]);
          expect(takes.slice(i + 1).filter((other) => overlap(other, block))).toEqual([]);
          const stretch = way.startsWith('roof')
            ? vehicle.roof!
            : way === 'box up'
              ? whole.x
              : vehicle.floor!;
          expect(contains({ ...whole, x: stretch }, block)).toBe(true);
          // the box that is solved is the one that stands there: its walls are 1 mm
          if (way.includes('box') && mount.kind === 'box') {
            expect(block.x[1] - block.x[0]).toBeCloseTo(mount.length + 0.002, 9);
            expect(block.y[1] - block.y[0]).toBeCloseTo(mount.width + 0.002, 9);
            expect(block.z[1] - block.z[0]).toBeCloseTo(mount.depth + 0.001, 9);
          }
        });
      }
    }
  });

  it('every candidate is an installation that can be built, plain, and the same every time', () => {
    for (const vehicle of vehicles.slice(0, 20)) {
      const { candidates } = whatFits(vehicle);
      for (const one of candidates) checkInstallation(installed(one, WHOLE[one.speaker]));
      expect(new Set(candidates.map(({ key }) => key)).size).toBe(candidates.length);
      expect(whatFits(structuredClone(vehicle), structuredClone(WHOLE)).candidates).toEqual(
        JSON.parse(JSON.stringify(candidates))
      );
    }
  });

  it('a larger vehicle, or one with less in the way, loses nothing, and its boxes get no smaller', () => {
    const kinds = (vehicle: Vehicle) => {
      const most = new Map<string, number>();
      for (const { speaker, way, second, mount } of whatFits(vehicle).candidates) {
        const kind = [speaker, way, second ? 'two' : 'one'].join();
        const size =
          way.includes('box') && mount.kind === 'box' ? mount.length * mount.width * mount.depth : 0;
        most.set(kind, Math.max(most.get(kind) ?? 0, size));
      }
      return most;
    };
    for (const vehicle of randomVehicles(40, 16, 1, false)) {
      const small = kinds(vehicle);
      const longer = vehicle.length + 0.0073;
      for (const larger of [
        { ...vehicle, length: longer, ...(vehicle.roof && { roof: [0, longer] as const }) },
        { ...vehicle, width: vehicle.width + 0.0031 },
        { ...vehicle, height: vehicle.height + 0.0047 },
        { ...vehicle, obstacles: vehicle.obstacles.slice(1) }
      ]) {
        const large = kinds(larger);
        for (const [kind, size] of small)
          expect(large.get(kind) ?? -1).toBeGreaterThanOrEqual(size * (1 - 1e-9));
      }
    }
  });
});

test('the largest free blocks are those that a search of every block on the lattice finds to be largest', () => {
  const lattice = 6;
  const cells = (metres: number) => Math.round((metres * 1000) / lattice);
  const at = (n: number) => (n * lattice) / 1000;
  let several = 0;
  for (const vehicle of randomVehicles(30, 17, lattice, false)) {
    const room = roomInside(vehicle);
    const solid = vehicle.obstacles.map(obstacleBlock);
    const [nx, ny, z0, z1] = [vehicle.length, vehicle.width, room.whole.z[0], room.whole.z[1]].map(cells);
    for (const against of ['roof', 'floor'] as const) {
      const blockOf = (a: number, b: number, c: number, d: number, high: number): Block => ({
        x: [at(a), at(b)],
        y: [at(c) - vehicle.width / 2, at(d) - vehicle.width / 2],
        z: against === 'roof' ? [at(z1 - high), at(z1)] : [at(z0), at(z0 + high)]
      });
      const isFree = (a: number, b: number, c: number, d: number, high: number): boolean =>
        a >= 0 &&
        b <= nx &&
        c >= 0 &&
        d <= ny &&
        high <= z1 - z0 &&
        !solid.some((other) => overlap(other, blockOf(a, b, c, d, high)));
      const largest: Block[] = [];
      for (let a = 0; a < nx; a++)
        for (let b = a + 1; b <= nx; b++)
          for (let c = 0; c < ny; c++)
            for (let d = c + 1; d <= ny; d++)
              for (let high = 1; high <= z1 - z0; high++) {
                const grows =
                  isFree(a - 1, b, c, d, high) ||
                  isFree(a, b + 1, c, d, high) ||
                  isFree(a, b, c - 1, d, high) ||
                  isFree(a, b, c, d + 1, high) ||
                  isFree(a, b, c, d, high + 1);
                if (isFree(a, b, c, d, high) && !grows) largest.push(blockOf(a, b, c, d, high));
              }
      if (largest.length > 3) several++;
      const sorted = (blocks: readonly Block[]) =>
        blocks.map(({ x, y, z }) => [...x, ...y, ...z].map((side) => Math.round(side * 1e6)).join()).sort();
      expect(sorted(largestBlocks(room, against, [0, vehicle.length]))).toEqual(sorted(largest));
    }
  }
  expect(several).toBeGreaterThan(5);
});

describe('the narrow hood switcher, 18 mm inside', () => {
  const hood = DEMO_MODELS.find(({ width }) => width === 0.018)!;
  const { candidates, misfits } = fit(hood, SPEAKERS);

  it('refuses the 28 mm oval with the millimetres', () => {
    expect(candidates.filter(({ speaker }) => speaker === 'oval')).toEqual([]);
    const why = Object.fromEntries(
      misfits.filter(({ speaker }) => speaker === 'oval').map((one) => [one.way, one.why])
    );
    expect(why).toEqual({
      roof: 'it is 10 mm too large: it needs 28 mm across, and the hood is 18 mm wide inside',
      'roof box': 'it is 12 mm too large: it needs 30 mm across, and the hood is 18 mm wide inside',
      'box up': 'it is 12 mm too large: it needs 30 mm across, and the hood is 18 mm wide inside',
      'box down': 'the floor may not be cut',
      floor: 'the floor may not be cut'
    });
  });

  it('takes the 16 × 35 mm in the hood’s roof and in a box of 16 mm, and the ø 23 mm over the wider cab alone', () => {
    const of = (key: string) => candidates.filter(({ speaker }) => speaker === key);
    expect(new Set(of('oval-16x35').map(({ way }) => way))).toEqual(new Set(['roof', 'roof box']));
    expect(of('oval-16x35').every(({ mount }) => 'width' in mount && mount.width <= 0.018)).toBe(true);
    expect(of('round-23').map(({ mount }) => mount)).toMatchObject([{ kind: 'shell', width: 0.03 }]);
    const [only] = of('round-23');
    expect(only.takes[0].x[0]).toBeGreaterThanOrEqual(hood.length - hood.cab!.length - 1e-9);
  });
});

describe('two of a kind', () => {
  const vehicle: Vehicle = {
    name: 'long',
    length: 0.12,
    width: 0.03,
    height: 0.03,
    above: 0.014,
    obstacles: [],
    openings: 0,
    roof: [0, 0.12]
  };
  const two = (of: Vehicle, leastLoad?: number) =>
    fit(of, { oval: SPEAKERS.oval }, leastLoad).candidates.filter(
      ({ way, second }) => way === 'roof' && second
    );

  it('lie side by side about the middle where nothing keeps them apart', () => {
    const [{ mount, second }] = two(vehicle);
    expect(mount).toMatchObject({ offset: -0.02 });
    expect(second).toEqual({ at: [0.02, 0], reversed: false, wiring: 'parallel' });
  });

  it('are wired in series where side by side they would go below the amplifier’s least load', () => {
    expect(two(vehicle, 4)[0].second!.wiring).toBe('series');
    expect(two(vehicle, 3.5)[0].second!.wiring).toBe('parallel');
  });

  it('find their places on both sides of what is between, and are none where only one fits', () => {
    const motor = {
      name: 'motor',
      from: 0.05,
      length: 0.02,
      aside: 0,
      width: 0.02,
      above: 0.01,
      height: 0.02
    };
    const [{ takes }] = two({ ...vehicle, obstacles: [motor] });
    expect(takes.map(({ x }) => x.map((side) => Math.round(side * 1e6) / 1e3))).toEqual([
      [10, 50],
      [70, 110]
    ]);
    expect(two({ ...vehicle, length: 0.079, roof: [0, 0.079] })).toEqual([]);
  });
});

test('an empty drawer has no candidates and no misfits; where nothing fits, each way of each speaker says why', () => {
  const tiny: Vehicle = {
    name: 'tiny',
    length: 0.01,
    width: 0.008,
    height: 0.006,
    above: 0.01,
    obstacles: [],
    openings: 0.0001,
    roof: [0, 0.01],
    floor: [0, 0.01]
  };
  expect(fit(tiny, {})).toEqual({ candidates: [], ladders: [], nothing: [], misfits: [] });
  const { candidates, misfits } = fit(tiny, SPEAKERS);
  expect(candidates).toEqual([]);
  expect(misfits).toHaveLength(9 * WAYS.length);
  expect(misfits.every(({ why }) => /^it is [\d.]+ mm too large: it needs [\d.]+ mm /.test(why))).toBe(true);
});

test('two that lie across in the floor say so; in a box they lie on both sides of its middle, in one of two frames’ length', () => {
  const [, tender] = DEMO_MODELS;
  const { candidates, ladders } = whatFits(tender, { phone: SPEAKERS['phone-11x15'] });
  const inFloor = candidates.find(({ way, second }) => way === 'floor' && second)!;
  // frames of 15 × 11 mm, along: nearest to the middle side by side
  expect(inFloor.name).toBe('Two in the floor, 35 mm from the left, side by side across it, the body sealed');
  expect(inFloor.mount).toMatchObject({ kind: 'box', length: 0.07, width: 0.03, offset: [0, -0.0055] });
  expect(inFloor.second).toMatchObject({ at: [0, 0.0055] });
  const pairs = ladders
    .map(([least]) => candidates.find(({ key }) => key === least)!)
    .filter(({ second }) => second);
  expect(pairs[0]).toMatchObject({
    mount: { kind: 'box', length: 0.03, width: 0.011, depth: 0.0035, offset: [-0.0075, 0] },
    second: { at: [0.0075, 0] }
  });
});
