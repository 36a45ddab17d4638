import { SHOWN } from '../../../plot/pictures/wave-time.js';
import type { Hertz, Seconds } from '../../../units.js';

/** How much slower than in truth a tone moves on the screen: "1600 times slower". */
export function toneSlower(frequency: Hertz): string {
  return slower(SHOWN.tone * frequency);
}

/** The same of a puff that takes so long in truth. */
export function puffSlower(duration: Seconds): string {
  return slower(SHOWN.puff / duration);
}

function slower(times: number): string {
  return `${Number(times.toPrecision(2))} times slower`;
}
