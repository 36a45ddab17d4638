import { describe, expect, it, test } from 'vitest';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { fit } from '../../../src/lib/fitting/fit.js';
import { whyNot } from '../../../src/lib/fitting/why-not.js';
import type { Obstacle, Vehicle } from '../../../src/lib/fitting/vehicle.js';
import type { Way } from '../../../src/lib/fitting/ways.js';
import { randomVehicles } from './random-vehicles.js';

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

  it('names all that is in the way where no one thing would do', () => {
    const second = { ...MOTOR, name: 'weight', height: 0.03 };
    expect(
      whyNot({ ...VEHICLE, obstacles: [MOTOR, second] }, 'any', { ...SPEAKERS.oval, depth: 0.012 }, 'roof')
        .remedy
    ).toBeNull();
    const { why } = whyNot(
      { ...VEHICLE, obstacles: [MOTOR, second] },
      'any',
      { ...SPEAKERS['oval-16x35'], depth: 0.012 },
      'roof'
    );
    expect(why).toBe('“motor’s cover” and “weight” are in its way');
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

test('of random vehicles: what is taken off as told makes it fit, and a hundredth of a millimetre less does not', () => {
  let told = 0;
  for (const vehicle of randomVehicles(120, 31)) {
    for (const { speaker, way, remedy } of fit(vehicle, {
      any: SPEAKERS['phone-13x18'],
      oval: SPEAKERS['oval-16x35']
    }).misfits) {
      const said = /([\d.]+) mm off (.+) of “(.+)”$/.exec(remedy ?? '');
      if (!said) continue;
      told++;
      const [, figure, face, name] = said;
      const has = (less: number) => {
        const by = Number(figure) / 1000 - less;
        const obstacles = vehicle.obstacles.map((one) => (one.name === name ? trimmed(one, face, by) : one));
        const { candidates } = fit(
          { ...vehicle, obstacles },
          { [speaker]: { any: SPEAKERS['phone-13x18'], oval: SPEAKERS['oval-16x35'] }[speaker]! }
        );
        return candidates.some((one) => one.way === way);
      };
      // a figure in four digits
      expect([name, face, figure, has(-1e-5)]).toEqual([name, face, figure, true]);
      expect([name, face, figure, has(1e-5)]).toEqual([name, face, figure, false]);
    }
  }
  expect(told).toBeGreaterThan(20);
});

function trimmed(one: Obstacle, face: string, by: number): Obstacle {
  if (face === 'the top') return { ...one, height: one.height - by };
  if (face === 'the underside') return { ...one, height: one.height - by, above: one.above + by };
  if (face === 'the left end') return { ...one, length: one.length - by, from: one.from + by };
  if (face === 'the right end') return { ...one, length: one.length - by };
  return { ...one, width: one.width - by, aside: one.aside + (face === 'one side' ? by / 2 : -by / 2) };
}
