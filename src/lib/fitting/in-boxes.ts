import { mm } from '../acoustics/limits.js';
import type { BoxMount } from '../acoustics/mounts/mount.js';
import type { CubicMetres, Metres } from '../units.js';
import { lengthOf, TOUCH, volumeOf, type Block } from './block.js';
import { across, keyed, nearest, tidy, type Asked, type Candidate } from './candidate.js';
import { planOf } from './free-volume.js';
import { letsSoundOut, type Vehicle } from './vehicle.js';
import { againstOf, AIR_ABOVE, laid, leastBox, TURNS, WALL, type Turn, type Way } from './ways.js';

/** Of a speaker in a way so many boxes are tried: the least, and the largest of the places with most room. */
const MOST_PLACES = 2;

/** Closed boxes: the least, the largest that each of the roomiest places takes, and one between; with one speaker and with two. */
export function inBoxes({ vehicle, key, speaker, way, blocks, wiring }: Asked): Candidate[] {
  if (way === 'box up' && !letsSoundOut(vehicle)) return [];
  const found: Candidate[] = [];
  for (const two of [false, true])
    for (const { box, turn, block } of boxesOf({ speaker, way, blocks, two })) {
      const { length } = laid(speaker, turn);
      const size = `${mm(box.length)} × ${mm(box.width)} × ${mm(box.depth)} mm inside`;
      const takes: Block[] = [outsideOf(box, block, way)];
      const words = BOX_WORDS[way as keyof typeof BOX_WORDS];
      found.push(
        keyed({
          ...{ speaker: key, way, turn, takes, space: volumeOf(takes[0]) },
          ...standing(vehicle, way, box.depth),
          name: `${two ? 'Two in a box' : 'Box'} ${words}, ${size}${across(speaker, turn)}`,
          mount: way === 'box up' ? { ...box, body: bodyOf(vehicle, box) } : box,
          ...(two && { second: { at: [length, 0], reversed: false, wiring } })
        })
      );
    }
  return found;
}

const BOX_WORDS = {
  'roof box': 'under the roof',
  'box up': 'in the body, cone up',
  'box down': 'on the floor, cone down'
};

interface BoxPlace {
  box: BoxMount;
  turn: Turn;
  /** The free block that it lies in. */
  block: Block;
}

function boxesOf({
  speaker,
  way,
  blocks,
  two
}: Pick<Asked, 'speaker' | 'way' | 'blocks'> & { two: boolean }): BoxPlace[] {
  const spare = way === 'box up' ? AIR_ABOVE : 0;
  const fitting: { turn: Turn; block: Block; most: BoxMount; least: ReturnType<typeof leastBox> }[] = [];
  for (const block of blocks)
    for (const turn of TURNS) {
      const least = leastBox(speaker, turn, two);
      const most: BoxMount = {
        kind: 'box',
        length: lengthOf(block.x) - 2 * WALL,
        width: lengthOf(block.y) - 2 * WALL,
        depth: lengthOf(block.z) - WALL - spare
      };
      if (!(
        most.length >= least.length - TOUCH &&
        most.width >= least.width - TOUCH &&
        most.depth >= least.depth - TOUCH
      ))
        continue;
      fitting.push({ turn, block, most, least });
      break;
    }
  if (fitting.length === 0) return [];
  fitting.sort((a, b) => boxVolume(b.most) - boxVolume(a.most));
  const [largest] = fitting;
  const made = fitting
    .slice(0, MOST_PLACES)
    .map(({ most, least, turn, block }) => ({ box: between(least, most, 1), turn, block }));
  made.push({ box: between(largest.least, largest.most, 0.5), turn: largest.turn, block: largest.block });
  made.push({ box: between(largest.least, largest.most, 0), turn: largest.turn, block: largest.block });
  return made;
}

/** A box between the least and the most, in steps of the logarithm; rounded down to tenths of a millimetre, never below the least. */
function between(
  least: { length: Metres; width: Metres; depth: Metres },
  most: BoxMount,
  share: number
): BoxMount {
  const side = (key: 'length' | 'width' | 'depth'): Metres => {
    const exact = least[key] * (most[key] / least[key]) ** share;
    return tidy(Math.max(least[key], Math.floor(exact * 1e4 + 1e-6) / 1e4));
  };
  return { kind: 'box', length: side('length'), width: side('width'), depth: side('depth') };
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

function boxVolume({ length, width, depth }: BoxMount): CubicMetres {
  return length * width * depth;
}
