import { mm } from '../acoustics/limits.js';
import type { Speaker } from '../acoustics/speaker/speaker.js';
import type { Metres } from '../units.js';
import { TOUCH, type Span } from './block.js';
import { longerCut, oneMove, oneTrim, rounded, twoTrims, type Remedy } from './remedies.js';
import { placeFor, roomInside, type Need } from './room-inside.js';
import { letsSoundOut, type Vehicle } from './vehicle.js';
import { againstOf, needOf, stretchOf, TURNS, type Way } from './ways.js';

/** A speaker that does not fit in a way of mounting. */
export interface Misfit {
  /** Key of the speaker. */
  speaker: string;
  way: Way;
  /** One sentence, in millimetres. */
  why: string;
  /** What would make it fit, where one thing would. */
  remedy: string | null;
}

/**
 * Why nothing of a speaker fits in a way, and what would make it fit: trims and cuts exact to a thousandth of a millimetre, moves to a tenth. In steps
 * of a kind of remedy.
 */
export function* whyNotSteps(
  vehicle: Vehicle,
  key: string,
  speaker: Speaker,
  way: Way
): Generator<void, Misfit> {
  const misfit = (why: string, remedy: string | null = null): Misfit => ({ speaker: key, way, why, remedy });
  if (!stretchOf(way, vehicle)) return misfit(`the ${againstOf(way)} may not be cut`);
  if (way === 'box up' && !letsSoundOut(vehicle))
    return misfit('the body has no openings that the sound could leave by', 'openings in the body');
  const needs = TURNS.map((turn) => needOf(way, speaker, turn, vehicle)!);
  const empty = roomInside(vehicle, []);
  const inEmpty = needs.filter((need) => placeFor(empty, need));
  if (inEmpty.length === 0) {
    const longer = yield* nearest(needs, longerCut, vehicle);
    return misfit(lacking(vehicle, needs), longer?.words ?? null);
  }
  const trim = yield* nearest(inEmpty, oneTrim, vehicle);
  const move = yield* nearest(inEmpty, oneMove, vehicle);
  if (trim)
    return misfit(
      `“${trim.obstacle!.name}” is ${mm(trim.by)} mm in its way`,
      [trim, move].flatMap((one) => one?.words ?? []).join(', or ')
    );
  if (move) return misfit(`“${move.obstacle!.name}” is in its way`, move.words);
  const other = (yield* nearest(inEmpty, twoTrims, vehicle)) ?? (yield* nearest(inEmpty, longerCut, vehicle));
  const inTheWay = vehicle.obstacles.map(({ name }) => `“${name}”`);
  return misfit(
    `${listed(inTheWay)} ${inTheWay.length === 1 ? 'is' : 'are'} in its way`,
    other?.words ?? null
  );
}

/** Of what makes room for it, lying along or across, the least; the words say where it must lie across for it. */
function* nearest(
  needs: readonly Need[],
  remediesFor: (vehicle: Vehicle, need: Need) => Remedy[],
  vehicle: Vehicle
): Generator<void, Remedy | null> {
  let best: Remedy | null = null;
  for (const need of needs) {
    for (const remedy of remediesFor(vehicle, need))
      if (!best || remedy.by < best.by)
        best = need.turn === 90 ? { ...remedy, words: `turn it across, and ${remedy.words}` } : remedy;
    yield;
  }
  return best;
}

/** What the empty body lacks, of the way round and the part of the body in which it lacks least. */
function lacking(vehicle: Vehicle, needs: readonly Need[]): string {
  const { length, width, height, cab, chassis } = vehicle;
  const border = length - (cab?.length ?? 0);
  const parts: [string, Span, Metres][] = cab
    ? [
        ['hood', [0, border], width],
        ['cab', [border, length], cab.width],
        ['body', [0, length], Math.min(width, cab.width)]
      ]
    : [['body', [0, length], width]];
  const high = height - (chassis?.height ?? 0);
  const all = needs.flatMap((need) =>
    parts.map(([part, along, wide]) => {
      const stretch = Math.max(0, Math.min(along[1], need.stretch[1]) - Math.max(along[0], need.stretch[0]));
      const short: [Metres, string][] = [
        [need.width - wide, `${mm(need.width)} mm across, and the ${part} is ${mm(wide)} mm wide inside`],
        [need.length - stretch, `${mm(need.length)} mm along, and there are ${mm(stretch)} mm for it`],
        [need.height - high, `${mm(need.height)} mm in height, and there are ${mm(high)} mm for it`]
      ];
      return short.filter(([by]) => by > TOUCH).sort((a, b) => b[0] - a[0]);
    })
  );
  const least = all.reduce((a, b) => (worst(b) < worst(a) ? b : a));
  const [[by, words]] = least;
  return `it is ${mm(rounded(by))} mm too large: it needs ${words}`;
}

function worst(short: readonly [Metres, string][]): Metres {
  return short.reduce((sum, [by]) => sum + by, 0);
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
