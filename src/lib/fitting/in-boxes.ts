import { mm } from '../acoustics/limits.js';
import type { BoxMount } from '../acoustics/mounts/mount.js';
import type { CubicMetres, Metres } from '../units.js';
import { lengthOf, TOUCH, type Block } from './block.js';
import { across, made, nearest, tidy, type Asked, type Candidate } from './candidate.js';
import { planOf } from './free-volume.js';
import { ladder, SIDES, type Sides } from './ladder.js';
import { letsSoundOut, type Vehicle } from './vehicle.js';
import {
  againstOf,
  AIR_ABOVE,
  laid,
  leastBox,
  ROWS,
  TURNS,
  WALL,
  type Row,
  type Turn,
  type Way
} from './ways.js';

/**
 * Closed boxes, with one speaker and with two: of each free place that takes one a ladder of sizes from the least to the largest (`ladder`), the
 * roomiest place first; one ladder after the other.
 */
export function* inBoxes({ vehicle, key, speaker, way, blocks, wiring }: Asked): Generator<Candidate[]> {
  if (way === 'box up' && !letsSoundOut(vehicle)) return;
  for (const rows of [ROWS.slice(0, 1), ROWS.slice(1)])
    for (const { least, most, turn, row, block } of placesFor({ speaker, way, blocks }, rows))
      yield ladder(least, most, (row === 'one' ? 1 : 2) * speaker.bodyVolume).map((sides) => {
        const { offset, second } = lyingIn(row, laid(speaker, turn));
        const box: BoxMount = { kind: 'box', ...sides, ...(offset && { offset }) };
        const size = `${mm(box.length)} × ${mm(box.width)} × ${mm(box.depth)} mm inside`;
        const words = BOX_WORDS[way as keyof typeof BOX_WORDS];
        return made(
          {
            ...{ speaker: key, way, turn, takes: [outsideOf(box, block, way)] },
            ...standing(vehicle, way, box.depth),
            name: `${row === 'one' ? 'Box' : 'Two in a box'} ${words}, ${size}${across(speaker, turn)}`,
            mount: way === 'box up' ? { ...box, body: bodyOf(vehicle, box) } : box,
            ...(second && { second: { at: second, reversed: false, wiring } })
          },
          speaker
        );
      });
}

/** Where the middles of the cones are: one in the middle of the front, two on both sides of it, frame at frame. */
function lyingIn(
  row: Row,
  { length, width }: { length: Metres; width: Metres }
): { offset?: [Metres, Metres]; second?: [Metres, Metres] } {
  switch (row) {
    case 'one':
      return {};
    case 'two along':
      return { offset: [tidy(-length / 2), 0], second: [tidy(length / 2), 0] };
    case 'two across':
      return { offset: [0, tidy(-width / 2)], second: [0, tidy(width / 2)] };
  }
}

const BOX_WORDS = {
  'roof box': 'under the roof',
  'box up': 'in the body, cone up',
  'box down': 'on the floor, cone down'
};

interface BoxPlace {
  least: Sides;
  most: Sides;
  turn: Turn;
  row: Row;
  /** The free block that it lies in. */
  block: Block;
}

/** The free blocks that take a box, the roomiest first; where several ways of lying fit it is the first of them. */
function placesFor(
  { speaker, way, blocks }: Pick<Asked, 'speaker' | 'way' | 'blocks'>,
  rows: readonly Row[]
): BoxPlace[] {
  const spare = way === 'box up' ? AIR_ABOVE : 0;
  const places: BoxPlace[] = [];
  for (const block of blocks) {
    const most: Sides = {
      length: lengthOf(block.x) - 2 * WALL,
      width: lengthOf(block.y) - 2 * WALL,
      depth: lengthOf(block.z) - WALL - spare
    };
    const [first] = rows
      .flatMap((row) => TURNS.map((turn) => ({ row, turn, least: leastBox(speaker, turn, row) })))
      .filter(({ least }) => isWithin(least, most));
    if (first) places.push({ ...first, most, block });
  }
  const roomOf = ({ most }: BoxPlace): CubicMetres => most.length * most.width * most.depth;
  return places.sort((a, b) => roomOf(b) - roomOf(a));
}

function isWithin(least: Sides, most: Sides): boolean {
  return SIDES.every((side) => most[side] >= least[side] - TOUCH);
}

/** Where a box lies in its free block: at its left end, on the middle line or as near to it as it can be. */
function outsideOf({ length, width, depth }: BoxMount, block: Block, way: Way): Block {
  const across = width + 2 * WALL;
  const y = nearest([block.y[0] + across / 2, block.y[1] - across / 2], 0);
  const high = depth + WALL;
  return {
    x: [block.x[0], block.x[0] + length + 2 * WALL],
    y: [y - across / 2, y + across / 2],
    z: againstOf(way) === 'roof' ? [block.z[1] - high, block.z[1]] : [block.z[0], block.z[0] + high]
  };
}

/** How high over the board its lowest face is, and where its cone looks. */
function standing(
  { above, height, chassis }: Vehicle,
  way: Way,
  depth: Metres
): Pick<Candidate, 'above' | 'facing'> {
  const floor = above + (chassis?.height ?? 0);
  if (way === 'roof box') return { above: tidy(above + height - depth), facing: 'up' };
  return way === 'box up'
    ? { above: tidy(floor + WALL), facing: 'up' }
    : { above: tidy(floor), facing: 'down' };
}

/** The body round a box, by its length and its mean width, or the width of the part that the box stands in where that is more. */
function bodyOf(vehicle: Vehicle, box: BoxMount): NonNullable<BoxMount['body']> {
  const { length, width } = planOf(vehicle);
  return {
    length,
    width: Math.max(width, tidy(box.width + 2 * WALL)),
    height: vehicle.height - (vehicle.chassis?.height ?? 0),
    openings: vehicle.openings
  };
}
