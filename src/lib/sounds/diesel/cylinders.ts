import type { Seconds } from '../../units.js';
import { random } from '../blocks/random.js';
import { type Diesel, dieselSize } from './diesel.js';

/** From one cylinder to the next along a bank, in metres, for a medium-speed engine. */
const PITCH = 0.3;
/** Speed of sound in hot exhaust, m/s. */
export const HOT_SOUND = 520;

/** What one cylinder is like, in the order of firing. Numbers called "own" are normally distributed. */
export interface Cylinder {
  /** Which exhaust manifold it blows into: 0 or 1. */
  bank: 0 | 1;
  /** Own strength and timing. */
  strength: number;
  timing: number;
  /** How long its blowdown lasts beside the others'. */
  width: number;
  /** How sharply it blows down and how hard it knocks, beside the others. */
  edge: number;
  knock: number;
  /** Where along the block it stands, 0 … 1. */
  place: number;
  /** From its valve to the collector, which is in the middle of the bank. */
  runner: Seconds;
}

/**
 * The cylinders of an engine in the order in which they fire. In a vee the firings go from bank to bank; along a bank
 * the order leaps (as crankshafts are balanced, neighbours do not follow each other). Everything follows from the seed
 * alone, so that it is the same engine at every notch.
 */
export function cylindersOf(sound: Diesel): Cylinder[] {
  const { cylinders, layout, seed } = sound;
  const chance = random(seed);
  const inBank = layout === 'vee' ? Math.ceil(cylinders / 2) : cylinders;
  const order = orderAlong(inBank);
  const all = Array.from({ length: cylinders }, (_, i): Cylinder => {
    const bank = layout === 'vee' && i % 2 === 1 ? 1 : 0;
    const along = order[layout === 'vee' ? i >> 1 : i];
    return {
      bank,
      strength: chance.gaussian(),
      timing: chance.gaussian(),
      width: Math.exp(0.13 * chance.gaussian()),
      edge: Math.exp(0.25 * chance.gaussian()),
      knock: Math.exp(0.28 * chance.gaussian()),
      place: (along + 0.5) / inBank,
      runner: (PITCH * dieselSize(sound) * Math.abs(along - (inBank - 1) / 2)) / HOT_SOUND
    };
  });
  // One of them is tired: every engine has one.
  all[Math.floor(chance.uniform() * cylinders)].strength -= 1.8;
  return all;
}

/** Places along a bank in the order of firing: leaps of about 0.4 of the bank; six fire 1-5-3-6-2-4 (common practice). */
function orderAlong(count: number): number[] {
  if (count === 6) return [0, 4, 2, 5, 1, 3];
  let leap = Math.max(1, Math.round(0.4 * count));
  while (leap < count && greatestDivisor(leap, count) > 1) leap++;
  return Array.from({ length: count }, (_, i) => (i * leap) % count);
}

function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}
