import type { Metres } from '../units.js';
import {
  contains,
  lengthOf,
  overlap,
  spansBetween,
  spansOverlap,
  TOUCH,
  volumeOf,
  type Block,
  type Span
} from './block.js';
import { envelope, narrowing, obstacleBlock, type Obstacle, type Vehicle } from './vehicle.js';

/** What is free in a vehicle and what is not. */
export interface RoomInside {
  /** From the top of the chassis, or the lower edge of the body, to the roof. */
  whole: Block;
  /** Obstacles as blocks, in their order. */
  obstacles: readonly Block[];
  /** What no file takes away: the sides of the narrower part. */
  walls: readonly Block[];
}

/** A thing that is to find its place: how large, against what it lies, and where along the length it must be. */
export interface Need {
  length: Metres;
  width: Metres;
  height: Metres;
  against: 'roof' | 'floor';
  /** It must lie wholly within. */
  stretch: Span;
  /** Its middle is on the middle line of the body: a speaker in a roof, of which the models know no other. */
  centred: boolean;
  /** 90 where a frame that is longer than wide lies across. */
  turn: 0 | 90;
}

export function roomInside(vehicle: Vehicle, obstacles: readonly Obstacle[] = vehicle.obstacles): RoomInside {
  const whole = envelope(vehicle);
  return {
    whole: { ...whole, z: [vehicle.chassis?.height ?? 0, vehicle.height] },
    obstacles: obstacles.map(obstacleBlock),
    walls: narrowing(vehicle)
  };
}

/** Everything that is not free. */
function taken({ obstacles, walls }: RoomInside): Block[] {
  return [...obstacles, ...walls];
}

function heights({ whole }: RoomInside, { height, against }: Pick<Need, 'height' | 'against'>): Span {
  return against === 'roof' ? [whole.z[1] - height, whole.z[1]] : [whole.z[0], whole.z[0] + height];
}

/** What of a stretch lies in the room. */
function stretchWithin({ whole }: RoomInside, [from, until]: Span): Span {
  return [Math.max(from, whole.x[0]), Math.min(until, whole.x[1])];
}

/** The block of a thing whose middle is there. */
export function blockAt(room: RoomInside, need: Need, x: Metres, y: Metres): Block {
  return {
    x: [x - need.length / 2, x + need.length / 2],
    y: [y - need.width / 2, y + need.width / 2],
    z: heights(room, need)
  };
}

/**
 * Where along the length the middle of a centred thing may be: longest possible spans, exact. A span may be a single point, where it just
 * fits.
 */
export function centredPlaces(room: RoomInside, need: Need): Span[] {
  const z = heights(room, need);
  const y: Span = [-need.width / 2, need.width / 2];
  const { whole } = room;
  if (z[0] < whole.z[0] - TOUCH || z[1] > whole.z[1] + TOUCH || y[1] > whole.y[1] + TOUCH) return [];
  const inTheWay = taken(room).filter((block) => spansOverlap(block.y, y) && spansOverlap(block.z, z));
  const within = stretchWithin(room, need.stretch);
  const free = spansBetween(
    within,
    inTheWay.map(({ x }) => x),
    need.length
  );
  return free.map(([from, until]) => {
    const [low, high] = [from + need.length / 2, until - need.length / 2];
    return low <= high ? [low, high] : [(low + high) / 2, (low + high) / 2];
  });
}

/**
 * The largest free blocks that lie against roof or floor within a stretch of the length: none of them could be larger in any way. Exact: every
 * face of such a block lies on a face of the room or of something in it.
 */
export function largestBlocks(room: RoomInside, against: Need['against'], stretch: Span): Block[] {
  const { whole } = room;
  const blocks = taken(room);
  const within = stretchWithin(room, stretch);
  const depths =
    against === 'roof'
      ? [whole.z[0], ...blocks.map(({ z }) => z[1])].map((from): Span => [from, whole.z[1]])
      : [whole.z[1], ...blocks.map(({ z }) => z[0])].map((until): Span => [whole.z[0], until]);
  const found: Block[] = [];
  for (const z of depths) {
    if (lengthOf(z) <= TOUCH) continue;
    const inTheWay = blocks.filter((block) => spansOverlap(block.z, z));
    const starts = [within[0], ...inTheWay.map(({ x }) => x[1])].filter((x) => x >= within[0] - TOUCH);
    const ends = [within[1], ...inTheWay.map(({ x }) => x[0])].filter((x) => x <= within[1] + TOUCH);
    for (const start of starts)
      for (const end of ends) {
        if (end - start <= TOUCH) continue;
        const x: Span = [start, end];
        const across = inTheWay.filter((block) => spansOverlap(block.x, x)).map(({ y }) => y);
        for (const y of spansBetween(whole.y, across, 0)) if (lengthOf(y) > TOUCH) found.push({ x, y, z });
      }
  }
  return found
    .filter((one, i) => !found.some((other, j) => contains(other, one) && (j < i || !contains(one, other))))
    .sort((a, b) => volumeOf(b) - volumeOf(a));
}

/** Where the thing first finds room, or null. A thing that fits anywhere fits where it touches on its left and on one side. */
export function placeFor(room: RoomInside, need: Need): Block | null {
  if (need.centred) {
    const [first] = centredPlaces(room, need);
    return first ? blockAt(room, need, first[0], 0) : null;
  }
  const { whole } = room;
  const blocks = taken(room);
  const within: Block = { ...whole, x: stretchWithin(room, need.stretch) };
  const xs = [within.x[0], ...blocks.map(({ x }) => x[1])];
  const ys = [whole.y[0], ...blocks.map(({ y }) => y[1])];
  for (const x of xs)
    for (const y of ys) {
      const block = blockAt(room, need, x + need.length / 2, y + need.width / 2);
      if (contains(within, block) && !blocks.some((other) => overlap(other, block))) return block;
    }
  return null;
}
