import { describe, expect, test } from 'vitest';
import { usualValues } from '../../../../src/lib/sounds/knob.js';
import { addPuff } from '../../../../src/lib/sounds/steam/add-puff.js';
import { eventChance } from '../../../../src/lib/sounds/blocks/event-chance.js';
import { beatsOwn } from '../../../../src/lib/sounds/steam/exhaust-flow.js';
import { beatRate, beatsPerTurn, type Steam, STEAM_KNOBS } from '../../../../src/lib/sounds/steam/steam.js';
import { close } from '../../../helpers/close.js';

const USUAL: Steam = { ...usualValues(STEAM_KNOBS), kind: 'steam', name: 'usual' };

describe('a puff', () => {
  const puff = { at: 10.3, rise: 20, decay: 90, height: 0.8 };

  test('is its formula, from a place between samples on', () => {
    const flow = new Float32Array(1000);
    addPuff(flow, { cyclic: false }, puff);
    for (const i of [0, 10, 11, 30, 120, 400]) {
      const t = i - puff.at;
      const exact = t < 0 ? 0 : puff.height * (1 - Math.exp(-t / puff.rise)) ** 2 * Math.exp(-t / puff.decay);
      close(flow[i], exact, { abs: 1e-6, because: 'single precision' });
    }
  });

  test('goes round in a loop and is cut off at the end of any other span', () => {
    const whole = new Float32Array(3000);
    addPuff(whole, { cyclic: false }, { ...puff, at: 900 });
    const loop = new Float32Array(1000);
    addPuff(loop, { cyclic: true }, { ...puff, at: 900 });
    const cut = new Float32Array(1000);
    addPuff(cut, { cyclic: false }, { ...puff, at: 900 });
    expect(loop[950]).toBe(whole[950]);
    close(loop[50], whole[1050], { abs: 1e-7, because: 'single precision' });
    expect(cut[50]).toBe(0);
  });

  test('that began before the span is heard from where it is', () => {
    const flow = new Float32Array(100);
    addPuff(flow, { cyclic: false }, { ...puff, at: -40 });
    close(flow[0], 0.8 * (1 - Math.exp(-2)) ** 2 * Math.exp(-40 / 90), {
      abs: 1e-6,
      because: 'single precision'
    });
  });
});

describe('the beats of a turn', () => {
  test('are four for two cylinders, six for three, and as many a second as the drivers turn', () => {
    expect([2, 3].map((cylinders) => beatsPerTurn({ cylinders }))).toEqual([4, 6]);
    close(beatRate({ cylinders: 2, driverDiameter: 1 / Math.PI }, 3), 12, {
      rel: 1e-12,
      because: 'rounding'
    });
  });

  test('are equal without unevenness and spread with it, the mean staying', () => {
    for (const { strength, late } of beatsOwn({ ...USUAL, unevenness: 0 })) {
      expect(strength).toBe(1);
      expect(Math.abs(late)).toBe(0);
    }
    for (const cylinders of [2, 3])
      for (const seed of [1, 2, 3]) {
        const own = beatsOwn({ ...USUAL, cylinders, seed, unevenness: 0.5 });
        const mean = (pick: (beat: (typeof own)[0]) => number) =>
          own.reduce((sum, beat) => sum + pick(beat), 0) / own.length;
        close(
          mean(({ strength }) => strength),
          1,
          { abs: 1e-12, because: 'rounding' }
        );
        close(
          mean(({ late }) => late),
          0,
          { abs: 1e-12, because: 'rounding' }
        );
        close(Math.sqrt(mean(({ strength }) => (strength - 1) ** 2)), 0.17, {
          rel: 1e-9,
          because: 'rounding'
        });
        close(Math.sqrt(mean(({ late }) => late ** 2)), 0.06, { rel: 1e-9, because: 'rounding' });
      }
  });
});

test('an event has its own chance, the same each time', () => {
  const draw = (seed: number, matter: number, event: number) => eventChance(seed, matter, event).uniform();
  expect(draw(8, 1, 1000)).toBe(draw(8, 1, 1000));
  const draws = [-2, -1, 0, 1, 2, 3].flatMap((event) => [0, 1, 2].map((matter) => draw(8, matter, event)));
  expect(new Set([...draws, draw(9, 0, 0)]).size).toBe(19);
});
