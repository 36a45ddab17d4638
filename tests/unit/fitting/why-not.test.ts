import { describe, expect, it, test } from 'vitest';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { refusal } from '../../../src/lib/acoustics/refusal.js';
import { overlap } from '../../../src/lib/fitting/block.js';
import { atOnce, fit, fittingSteps } from '../../../src/lib/fitting/fit.js';
import { whyNotSteps } from '../../../src/lib/fitting/why-not.js';
import {
  checkVehicle,
  obstacleBlock,
  type Obstacle,
  type Vehicle
} from '../../../src/lib/fitting/vehicle.js';
import type { Way } from '../../../src/lib/fitting/ways.js';
import { randomVehicles } from './random-vehicles.js';

const whyNot = (...asked: Parameters<typeof whyNotSteps>) => atOnce(whyNotSteps(...asked));

const MOTOR: Obstacle = {
  name: 'motor’s cover',
  from: 0,
  length: 0.06,
  aside: 0,
  width: 0.02,
  above: 0.008,
  height: 0.0212
};
const VEHICLE: Vehicle = {
  name: 'a hood',
  length: 0.06,
  width: 0.036,
  height: 0.04,
  above: 0.014,
  chassis: { height: 0.008, slit: 0, ends: 0, depth: 0.001 },
  obstacles: [MOTOR],
  roof: [0.01, 0.046],
  openings: 0
};

describe('what would make it fit', () => {
  it('is told in millimetres, with the way round it must lie', () => {
    // 36 mm of roof may be cut: a 35 mm frame with no turn, and 12 mm above the cover less than its depth
    expect(whyNot(VEHICLE, 'any', { ...SPEAKERS['oval-16x35'], depth: 0.012 }, 'roof')).toEqual({
      speaker: 'any',
      way: 'roof',
      why: '“motor’s cover” is 1.2 mm in its way',
      remedy: '1.2 mm off the top of “motor’s cover”'
    });
    const across = whyNot(
      { ...VEHICLE, roof: [0.01, 0.028] },
      'any',
      { ...SPEAKERS['oval-16x35'], depth: 0.012 },
      'roof'
    );
    expect(across.remedy).toBe('turn it across, and 1.2 mm off the top of “motor’s cover”');
  });

  it('is two trims where no one would do, and nothing where more than half of a thing would have to go', () => {
    const shallow = { ...SPEAKERS['oval-16x35'], depth: 0.012 };
    const weight = { ...MOTOR, name: 'weight', height: 0.03 };
    const two = whyNot({ ...VEHICLE, obstacles: [MOTOR, weight] }, 'any', shallow, 'roof');
    expect(two.why).toBe('“motor’s cover” and “weight” are in its way');
    expect(two.remedy).toBe('1.2 mm off the top of “motor’s cover” and 10 mm off the top of “weight”');
    // a frame of 28 × 40 mm is too long for the 36 mm that may be cut, whatever comes off
    const large = whyNot({ ...VEHICLE, obstacles: [MOTOR, weight] }, 'any', SPEAKERS.oval, 'roof');
    expect(large.remedy).toBeNull();
    const low = { ...MOTOR, height: 0.031 };
    expect(
      whyNot({ ...VEHICLE, width: 0.03, obstacles: [low] }, 'any', { ...shallow, depth: 0.02 }, 'roof')
    ).toMatchObject({
      why: '“motor’s cover” is in its way',
      remedy: null
    });
  });

  it('is a thing moved, where that alone makes room, beside what would have to come off it', () => {
    const decoder = { ...MOTOR, name: 'decoder', from: 0.041, length: 0.012, above: 0.03, height: 0.008 };
    const speaker = { ...SPEAKERS['oval-16x35'], depth: 0.012 };
    const told = whyNot(
      { ...VEHICLE, width: 0.03, roof: [0.01, 0.05], obstacles: [decoder] },
      'any',
      speaker,
      'roof'
    );
    // a frame of 35 mm from 10 mm on: the decoder begins at 41 and is 12 mm long, in a body of 60
    expect(told.remedy).toBe('4 mm off the left end of “decoder”, or move “decoder” 4 mm to the right');
  });

  it('is a longer cut, where room is there beyond it', () => {
    const told = whyNot(
      { ...VEHICLE, width: 0.03, obstacles: [], roof: [0.01, 0.042] },
      'any',
      SPEAKERS['oval-16x35'],
      'roof'
    );
    expect(told).toMatchObject({
      why: 'it is 3 mm too large: it needs 35 mm along, and there are 32 mm for it',
      remedy: 'cut the roof 3 mm further to the left'
    });
  });

  it.each<[Way, Partial<Vehicle>, string]>([
    ['roof', { roof: undefined }, 'the roof may not be cut'],
    ['floor', {}, 'the floor may not be cut'],
    ['box up', {}, 'the body has no openings that the sound could leave by'],
    // less than any model of a body takes
    ['box up', { openings: 5e-7, obstacles: [] }, 'the body has no openings that the sound could leave by']
  ])('says of %s what may not be', (way, part, why) => {
    expect(whyNot({ ...VEHICLE, ...part }, 'any', SPEAKERS.oval, way).why).toBe(why);
  });
});

const DRAWER = { any: SPEAKERS['phone-13x18'], oval: SPEAKERS['oval-16x35'] };

test('of random vehicles: what is done as told makes it fit, and a hundredth of a millimetre less does not', () => {
  const told = { trim: 0, pair: 0, move: 0, cut: 0 };
  for (const vehicle of randomVehicles(110, 31))
    for (const { speaker, way, remedy } of fit(vehicle, DRAWER).misfits) {
      const has = (changed: Vehicle) => hasRoom(changed, speaker as keyof typeof DRAWER, way);
      for (const part of (remedy ?? '').split(', or ')) {
        const trims = [
          ...part.matchAll(
            /([\d.]+) mm off (the top|the underside|the left end|the right end|one side|the other side) of “(.+?)”/g
          )
        ];
        const done = (less: number, which: number): Vehicle => ({
          ...vehicle,
          obstacles: trims.reduce(
            (all, [, figure, face, name], i) =>
              all.map((one) =>
                one.name === name
                  ? trimmed(one, face, Number(figure) / 1000 - (i === which ? less : -1e-8))
                  : one
              ),
            vehicle.obstacles
          )
        });
        trims.forEach((_, which) => {
          expect([part, has(done(-1e-5, which))]).toEqual([part, true]);
          expect([part, has(done(1e-5, which))]).toEqual([part, false]);
        });
        if (trims.length > 0) told[trims.length === 1 ? 'trim' : 'pair']++;
        const [, name, figure, where] = /move “(.+)” ([\d.]+) mm to the (.+)$/.exec(part) ?? [];
        if (where) {
          told.move++;
          const obstacles = vehicle.obstacles.map((one) =>
            one.name === name ? moved(one, where, Number(figure) / 1000) : one
          );
          expect(refusal(() => checkVehicle({ ...vehicle, obstacles }))).toBeNull();
          expect(overlaps(obstacles)).toBeLessThanOrEqual(overlaps(vehicle.obstacles));
          expect([part, has({ ...vehicle, obstacles })]).toEqual([part, true]);
        }
        const [, what, more, end] =
          /cut the (roof|floor) ([\d.]+) mm further to the (left|right)$/.exec(part) ?? [];
        if (end) {
          told.cut++;
          const cutBy = (less: number): Vehicle => {
            const [from, until] = vehicle[what as 'roof' | 'floor']!;
            const by = Number(more) / 1000 - less;
            return {
              ...vehicle,
              [what]: end === 'left' ? [Math.max(0, from - by), until] : [from, until + by]
            };
          };
          expect([part, has(cutBy(0))]).toEqual([part, true]);
          expect([part, has(cutBy(1e-5))]).toEqual([part, false]);
        }
      }
    }
  expect(told.trim).toBeGreaterThan(20);
  expect(told.pair).toBeGreaterThan(0);
  expect(told.move).toBeGreaterThan(20);
  expect(told.cut).toBeGreaterThan(2);
});

/** Whether there is room: what has some and is refused by a model, as a magnet that touches the chassis, says so in the model's words. */
function hasRoom(vehicle: Vehicle, key: keyof typeof DRAWER, way: Way): boolean {
  // what the other ways need is left out: they are not asked
  const { roof, floor, openings, ...rest } = vehicle;
  const asked: Vehicle = {
    ...rest,
    openings: way === 'box up' ? openings : 0,
    ...(roof && way.startsWith('roof') && { roof }),
    ...(floor && (way === 'floor' || way === 'box down') && { floor })
  };
  const { candidates, nothing } = atOnce(fittingSteps(asked, { [key]: DRAWER[key] }));
  return (
    candidates.some((one) => one.way === way) ||
    nothing.some((one) => one.way === way && one.refused !== null)
  );
}

/** How many of them lie over another one. */
function overlaps(obstacles: readonly Obstacle[]): number {
  const blocks = obstacles.map(obstacleBlock);
  return blocks.filter((one, i) => blocks.some((other, j) => i !== j && overlap(one, other))).length;
}

function moved(one: Obstacle, where: string, by: number): Obstacle {
  if (where === 'right') return { ...one, from: one.from + by };
  if (where === 'left') return { ...one, from: one.from - by };
  return { ...one, aside: one.aside + (where === 'far side' ? by : -by) };
}

function trimmed(one: Obstacle, face: string, by: number): Obstacle {
  if (face === 'the top') return { ...one, height: one.height - by };
  if (face === 'the underside') return { ...one, height: one.height - by, above: one.above + by };
  if (face === 'the left end') return { ...one, length: one.length - by, from: one.from + by };
  if (face === 'the right end') return { ...one, length: one.length - by };
  return { ...one, width: one.width - by, aside: one.aside + (face === 'one side' ? by / 2 : -by / 2) };
}
