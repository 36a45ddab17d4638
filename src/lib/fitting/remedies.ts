import { mm } from '../acoustics/limits.js';
import { leastWhere } from '../numeric/least-where.js';
import type { Metres } from '../units.js';
import { overlap, TOUCH, type Span } from './block.js';
import { placeFor, roomInside, type Need } from './room-inside.js';
import { envelope, narrowing, obstacleBlock, type Obstacle, type Vehicle } from './vehicle.js';

/** Something that makes room for a need. */
export interface Remedy {
  /** How much is taken off, moved or cut, together. */
  by: Metres;
  /** As what one does. */
  words: string;
  /** The obstacle that is in the way alone, where one is. */
  obstacle?: Obstacle;
}

/** So finely is said what must come off. */
const FINE: Metres = 1e-7;
/** So much of a side of an obstacle is left at least, as a share and as a length: what leaves less is no trim, but another thing. */
const LEFT = { share: 0.5, length: 0.002 } as const;

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

/** An obstacle by its place in the list, and the face at which something comes off. */
interface Cut {
  at: number;
  face: Face;
}

function fits(vehicle: Vehicle, obstacles: readonly Obstacle[], need: Need): boolean {
  return placeFor(roomInside(vehicle, obstacles), need) !== null;
}

/** The least of 0 … most at which something holds that goes on holding from there; null where it does not hold at the most. */
function leastOf(most: Metres, holds: (by: Metres) => boolean): Metres | null {
  return most > 0 && holds(most) ? leastWhere([0, most], FINE, holds) : null;
}

/** The most that may come off there. */
function mostOff(obstacle: Obstacle, { side }: Face): Metres {
  return Math.min((1 - LEFT.share) * obstacle[side], obstacle[side] - LEFT.length);
}

/** Everywhere that something may come off one of these obstacles; what stands on the floor would hang in the air without its underside. */
function cutsOf({ obstacles, chassis }: Vehicle, which: readonly number[]): Cut[] {
  return which.flatMap((at) =>
    FACES.filter(
      ({ name }) => name !== 'the underside' || obstacles[at].above > (chassis?.height ?? 0) + TOUCH
    ).map((face) => ({ at, face }))
  );
}

function cut(obstacles: readonly Obstacle[], { at, face }: Cut, by: Metres): Obstacle[] {
  const obstacle = obstacles[at];
  return obstacles.with(at, {
    ...obstacle,
    ...face.trimmed(obstacle, by),
    [face.side]: obstacle[face.side] - by
  });
}

/** Those obstacles of which one alone is in the way. */
function alone(vehicle: Vehicle, need: Need): number[] {
  const { obstacles } = vehicle;
  return [...obstacles.keys()].filter((at) => fits(vehicle, obstacles.toSpliced(at, 1), need));
}

/** What must come off which face of one obstacle, the others as they are: exact, by halving. */
export function oneTrim(vehicle: Vehicle, need: Need): Remedy[] {
  const { obstacles } = vehicle;
  return cutsOf(vehicle, alone(vehicle, need)).flatMap((one) => {
    const obstacle = obstacles[one.at];
    const by = leastOf(mostOff(obstacle, one.face), (off) => fits(vehicle, cut(obstacles, one, off), need));
    if (by === null) return [];
    return [{ by: rounded(by), obstacle, words: trimWords(obstacle, one, by) }];
  });
}

/** What must come off two obstacles, where no one trim would do: of each pair of faces the least of one, and what the other then needs. */
export function twoTrims(vehicle: Vehicle, need: Need): Remedy[] {
  const { obstacles } = vehicle;
  const found: Remedy[] = [];
  for (const at of obstacles.keys())
    for (const other of obstacles.keys()) {
      const without = obstacles.filter((_, i) => i !== at && i !== other);
      if (other === at || !fits(vehicle, without, need)) continue;
      for (const first of cutsOf(vehicle, [at]))
        for (const second of cutsOf(vehicle, [other])) {
          const both = (a: Metres, b: Metres): boolean =>
            fits(vehicle, cut(cut(obstacles, first, a), second, b), need);
          const [most, mostOfOther] = [first, second].map((one) => mostOff(obstacles[one.at], one.face));
          const a = leastOf(most, (by) => both(by, mostOfOther));
          const b = a === null ? null : leastOf(mostOfOther, (by) => both(a, by));
          if (a === null || b === null) continue;
          const words = [trimWords(obstacles[at], first, a), trimWords(obstacles[other], second, b)];
          found.push({ by: rounded(a) + rounded(b), words: words.join(' and ') });
        }
    }
  return found;
}

/** So far a thing is moved at most, in such steps until it is out of the way; then back by so little. */
const MOVES = { most: 0.03, step: 0.001, fine: 0.0001 } as const;

/** Where one obstacle alone, moved along or across, makes room: to where nothing else is. */
export function oneMove(vehicle: Vehicle, need: Need): Remedy[] {
  const { obstacles } = vehicle;
  const inside = envelope(vehicle);
  const walls = narrowing(vehicle);
  return alone(vehicle, need).flatMap((at) => {
    const obstacle = obstacles[at];
    const others = [...obstacles.toSpliced(at, 1).map(obstacleBlock), ...walls];
    return (
      [
        ['to the right', 'from', 1],
        ['to the left', 'from', -1],
        ['to the far side', 'aside', 1],
        ['to the near side', 'aside', -1]
      ] as const
    ).flatMap(([where, key, sign]): Remedy[] => {
      const moved = (by: Metres): Obstacle => ({ ...obstacle, [key]: obstacle[key] + sign * by });
      const room = (by: Metres): boolean => {
        const block = obstacleBlock(moved(by));
        return (
          isIn(inside.x, block.x) && isIn(inside.y, block.y) && !others.some((one) => overlap(one, block))
        );
      };
      const does = (by: Metres): boolean => room(by) && fits(vehicle, obstacles.with(at, moved(by)), need);
      for (let n = 1; n * MOVES.step <= MOVES.most; n++) {
        if (!does(n * MOVES.step)) continue;
        let by = n;
        const tenths = Math.round(MOVES.step / MOVES.fine);
        let fine = by * tenths;
        while (fine > (by - 1) * tenths + 1 && does((fine - 1) * MOVES.fine)) fine--;
        by = fine * MOVES.fine;
        return [{ by, obstacle, words: `move “${obstacle.name}” ${mm(rounded(by))} mm ${where}` }];
      }
      return [];
    });
  });
}

function isIn(outer: Span, inner: Span): boolean {
  return inner[0] >= outer[0] - TOUCH && inner[1] <= outer[1] + TOUCH;
}

/** How much further roof or floor must be cut, towards either end, for something that has room but for that. */
export function longerCut(vehicle: Vehicle, need: Need): Remedy[] {
  const { length, obstacles } = vehicle;
  const [from, until] = need.stretch;
  return (
    [
      ['left', from, (by: Metres): Span => [from - by, until]],
      ['right', length - until, (by: Metres): Span => [from, until + by]]
    ] as const
  ).flatMap(([where, most, longer]) => {
    const by = leastOf(most, (more) => fits(vehicle, obstacles, { ...need, stretch: longer(more) }));
    if (by === null) return [];
    return [
      { by: rounded(by), words: `cut the ${need.against} ${mm(rounded(by))} mm further to the ${where}` }
    ];
  });
}

function trimWords({ name }: Obstacle, { face }: Cut, by: Metres): string {
  return `${mm(rounded(by))} mm off ${face.name} of “${name}”`;
}

/** To a thousandth of a millimetre: the rest is what reckoning leaves. */
export function rounded(length: Metres): Metres {
  return Math.round(length * 1e6) / 1e6;
}
