import { levelDb } from '../../numeric/level-db.js';
import type { Decibels, Hertz } from '../../units.js';
import type { Response } from '../response.js';

/** A hump stands at least so far above an endless plate, a hole so far below it and below the tops on its two sides. */
const HUMP: Decibels = 3;
const HOLE: Decibels = 6;

/**
 * Where the sound of the back helps that of the front most, straight in front of an open mount: it comes half a wave late, and the
 * back's is the opposite of the front's; and where, a whole wave late, it first cancels it again. Null where
 * either is not plain. A thin plate parts the air in two like halves: with both faces of its cone
 * pushing outwards it would sound like an endless plate. So front plus (as much as comes round, turned about) is what is heard,
 * front minus that is 1, and what comes round helps just where more than an endless plate is heard. Folded plates
 * are no such halves; for them it is an assumption: the same sizes closed to a box, which is heard by its front alone, stay within
 * −4.1 … +2.9 dB of an endless plate from 1 to 10 kHz (the demo's box and cab body).
 *
 * @param response relative to the same speaker in an endless plate, ascending
 * @param from below it the speaker's own resonance shapes the curve
 * @param to up to here the response was computed
 */
export function humpAndHole(
  response: Response,
  from: Hertz,
  to: Hertz
): { hump: Hertz | null; hole: Hertz | null } {
  const { frequency } = response;
  const level = levelDb(response);
  const first = Math.max(
    1,
    frequency.findIndex((f) => f >= from)
  );
  let last = first;
  while (last + 1 < frequency.length && frequency[last + 1] <= to) last++;
  let [hump, hole] = [-1, -1];
  for (let i = first; i < last && hole < 0; i++) {
    const top = level[i] >= level[i - 1] && level[i] > level[i + 1];
    if (top && level[i] >= HUMP && (hump < 0 || level[i] > level[hump])) hump = i;
    const dip = level[i] <= level[i - 1] && level[i] < level[i + 1];
    if (dip && isHole(level, first, i, last)) hole = i;
  }
  return { hump: hump < 0 ? null : frequency[hump], hole: hole < 0 ? null : frequency[hole] };
}

function isHole(level: Float64Array, first: number, i: number, last: number): boolean {
  const before = Math.max(...level.subarray(first, i));
  const after = Math.max(...level.subarray(i + 1, last + 1));
  return level[i] <= Math.min(0, before, after) - HOLE;
}
