import { type Random, random } from './random.js';

/**
 * The chance that belongs to one event, such as the thousandth beat: it depends on nothing but the sound's seed, the
 * number of the event (any whole number) and what is asked (`matter`), so that the same seed gives the same sound.
 */
export function eventChance(seed: number, matter: number, event: number): Random {
  return random(seed ^ Math.imul(matter + 1, 0x3c6ef372) ^ Math.imul(event, 0x27d4eb2f));
}
