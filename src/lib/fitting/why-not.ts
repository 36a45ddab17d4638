import { mm } from '../acoustics/limits.js';
import type { Speaker } from '../acoustics/speaker/speaker.js';
import type { Metres } from '../units.js';
import { TOUCH, type Span } from './block.js';
import { placeFor, roomInside, type Need } from './room-inside.js';
import { letsSoundOut, type Obstacle, type Vehicle } from './vehicle.js';
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

/** Why nothing of a speaker fits in a way, and what would make it fit: exact to a thousandth of a millimetre. */
export function whyNot(vehicle: Vehicle, key: string, speaker: Speaker, way: Way): Misfit {
  const misfit = (why: string, remedy: string | null = null): Misfit => ({ speaker: key, way, why, remedy });
  if (!stretchOf(way, vehicle)) return misfit(`the ${againstOf(way)} may not be cut`);
  if (way === 'box up' && !letsSoundOut(vehicle))
    return misfit('the body has no openings that the sound could leave by', 'openings in the body');
  const needs = TURNS.map((turn) => needOf(way, speaker, turn, vehicle)!);
  const empty = roomInside(vehicle, []);
  const inEmpty = needs.filter((need) => placeFor(empty, need));
  if (inEmpty.length === 0) return misfit(lacking(vehicle, needs));
  const trims = inEmpty.flatMap((need) => trimsFor(vehicle, need)).sort((a, b) => a.by - b.by);
  if (trims.length > 0) {
    const [{ by, obstacle, face }] = trims;
    const across = inEmpty.length === 1 && inEmpty[0] === needs[1] && needs[0].length !== needs[1].length;
    return misfit(
      `“${obstacle.name}” is ${mm(by)} mm in its way`,
      `${across ? 'turn it across, and ' : ''}${mm(by)} mm off ${face} of “${obstacle.name}”`
    );
  }
  return misfit(`${listed(vehicle.obstacles.map(({ name }) => `“${name}”`))} are in its way`);
}

/** So finely is said what must come off. */
const FINE: Metres = 1e-7;
/** So much of an obstacle is left at least. */
const LEFT: Metres = 0.002;

interface Trim {
  by: Metres;
  obstacle: Obstacle;
  face: string;
}

interface Face {
  name: string;
  /** How much there is to take off. */
  side: 'length' | 'width' | 'height';
  /** The obstacle with so much taken off there. */
  trimmed: (obstacle: Obstacle, by: Metres) => Partial<Obstacle>;
}

const FACES: readonly Face[] = [
  { name: 'the top', side: 'height', trimmed: () => ({}) },
  { name: 'the underside', side: 'height', trimmed: ({ above }, by) => ({ above: above + by }) },
  { name: 'the right end', side: 'length', trimmed: () => ({}) },
  { name: 'the left end', side: 'length', trimmed: ({ from }, by) => ({ from: from + by }) },
  { name: 'one side', side: 'width', trimmed: ({ aside }, by) => ({ aside: aside + by / 2 }) },
  { name: 'the other side', side: 'width', trimmed: ({ aside }, by) => ({ aside: aside - by / 2 }) }
];

/** What must come off which face of one obstacle, the others as they are. What fits goes on fitting as more comes off, so it is halved down. */
function trimsFor(vehicle: Vehicle, need: Need): Trim[] {
  const { obstacles } = vehicle;
  const fitsWith = (at: number, obstacle: Obstacle): boolean =>
    placeFor(roomInside(vehicle, obstacles.with(at, obstacle)), need) !== null;
  return obstacles.flatMap((obstacle, at) => {
    if (!placeFor(roomInside(vehicle, obstacles.toSpliced(at, 1)), need)) return [];
    return FACES.flatMap(({ name, side, trimmed }): Trim[] => {
      // What stands on the floor would hang in the air.
      if (name === 'the underside' && obstacle.above <= (vehicle.chassis?.height ?? 0) + TOUCH) return [];
      const whole = obstacle[side];
      const fitsWithout = (by: Metres): boolean =>
        fitsWith(at, { ...obstacle, ...trimmed(obstacle, by), [side]: whole - by });
      // What leaves next to nothing is no trim: that is another model.
      let [low, high] = [0, whole - LEFT];
      if (high <= 0 || !fitsWithout(high)) return [];
      while (high - low > FINE) {
        const by = (low + high) / 2;
        if (fitsWithout(by)) high = by;
        else low = by;
      }
      return [{ by: rounded(high), obstacle, face: name }];
    });
  });
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

/** To a thousandth of a millimetre: the rest is what reckoning leaves. */
function rounded(length: Metres): Metres {
  return Math.round(length * 1e6) / 1e6;
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
