import { mm } from '../acoustics/limits.js';
import type { Metres } from '../units.js';
import { lengthOf, TOUCH, type Span } from './block.js';
import { across, made, nearest, tidy, type Asked, type Candidate } from './candidate.js';
import { freeVolume, planOf } from './free-volume.js';
import { pairWithin } from './pair-within.js';
import { blockAt, largestBlocks, type Need, type RoomInside } from './room-inside.js';
import { needOf, TURNS, type Turn } from './ways.js';

type Point = readonly [x: Metres, y: Metres];
/** Where the middle of a frame may be. */
type Area = readonly [x: Span, y: Span];

/**
 * A speaker in the floor, cone down, with the sealed body as its box: as deep as the air makes it that nothing fills. It is as near to the middle of the
 * floor as it can be, and so are two of a kind, along the floor or across it. Where both ways round fit the frame lies along.
 */
export function inFloor(asked: Asked): Candidate[] {
  const needs = TURNS.flatMap((turn) => {
    const need = needOf(asked.way, asked.speaker, turn, asked.vehicle);
    return need ? [{ turn, need, areas: areasFor(asked.room, need) }] : [];
  });
  const middle: Point = [asked.vehicle.length / 2, 0];
  const one = needs.find(({ areas }) => areas.length > 0);
  const pairs = needs.map((of) => ({ ...of, pair: pairIn(of.areas, of.need, middle) }));
  const two = pairs.find(({ pair }) => pair);
  return [
    ...(one ? [candidate(asked, one.turn, one.need, [nearestIn(one.areas, middle)])] : []),
    ...(two ? [candidate(asked, two.turn, two.need, two.pair!)] : [])
  ];
}

function candidate(
  { vehicle, room, key, speaker, way, wiring }: Asked,
  turn: Turn,
  need: Need,
  middles: readonly Point[]
): Candidate {
  const { length, height, above, chassis } = vehicle;
  const plan = planOf(vehicle);
  // the box has one width: the mean, or as much as they need in a wider cab
  const width = Math.max(plan.width, ...middles.map(([, y]) => tidy(2 * Math.abs(y) + need.width)));
  const air = freeVolume(vehicle, room);
  const depth = Math.max(speaker.depth, Math.min(height, air / (length * width)));
  const [first, second] = middles.map(([x, y]): [Metres, Metres] => [tidy(x - length / 2), tidy(y)]);
  const places = [...new Set(middles.map(([x]) => mm(tidy(x))))].join(' and ');
  const beside = second && first[0] === second[0] ? ', side by side across it' : '';
  return made(
    {
      name: `${second ? 'Two in' : 'In'} the floor, ${places} mm from the left${beside}, the body sealed${across(speaker, turn)}`,
      speaker: key,
      way,
      mount: {
        kind: 'box',
        ...{ length, width },
        depth: tidy(depth),
        ...(first.some((off) => off !== 0) && { offset: first })
      },
      turn,
      above: above + (chassis?.height ?? 0),
      facing: 'down',
      takes: middles.map(([x, y]) => blockAt(room, need, x, y)),
      ...(second && { second: { at: second, reversed: false, wiring } })
    },
    speaker
  );
}

/** Exact: wherever the frame fits it lies in one of the largest free blocks. */
function areasFor(room: RoomInside, need: Need): Area[] {
  const within = ([from, until]: Span, side: Metres): Span => {
    const [low, high] = [from + side / 2, until - side / 2];
    return low <= high ? [low, high] : [(low + high) / 2, (low + high) / 2];
  };
  return largestBlocks(room, need.against, need.stretch)
    .filter(({ x, y, z }) =>
      (
        [
          [x, need.length],
          [y, need.width],
          [z, need.height]
        ] as const
      ).every(([span, side]) => lengthOf(span) >= side - TOUCH)
    )
    .map(({ x, y }) => [within(x, need.length), within(y, need.width)]);
}

function nearestIn(areas: readonly Area[], middle: Point): Point {
  const points = areas.map(([x, y]): Point => [nearest(x, middle[0]), nearest(y, middle[1])]);
  const away = ([x, y]: Point): Metres => Math.hypot(x - middle[0], y - middle[1]);
  return points.reduce((a, b) => (away(b) < away(a) - TOUCH ? b : a));
}

/** Two that lie beside each other along one of the sides, as near to the middle as they can; null where only one fits. */
function pairIn(areas: readonly Area[], need: Need, middle: Point): Point[] | null {
  let [best, least]: [Point[] | null, Metres] = [null, Infinity];
  for (const axis of [0, 1] as const)
    for (const a of areas)
      for (const b of areas) {
        const pair = pairWithin(a[axis], b[axis], axis === 0 ? need.length : need.width, middle[axis]);
        if (!pair) continue;
        const other = 1 - axis;
        const points = [a, b].map((area, i): Point => {
          const beside = nearest(area[other], middle[other]);
          return axis === 0 ? [pair.at[i], beside] : [beside, pair.at[i]];
        });
        const away = Math.max(...points.map(([x, y]) => Math.hypot(x - middle[0], y - middle[1])));
        if (away < least - TOUCH) [best, least] = [points, away];
      }
  return best;
}
