import { USUAL_WALL } from '../acoustics/mounts/outside-size.js';
import type { Outline } from '../acoustics/outline.js';
import { outlineLength, outlineWidth, turned } from '../acoustics/outline.js';
import type { Speaker } from '../acoustics/speaker/speaker.js';
import type { Metres } from '../units.js';
import type { Span } from './block.js';
import type { Sides } from './ladder.js';
import type { Need } from './room-inside.js';
import type { Vehicle } from './vehicle.js';

/**
 * How a speaker can be mounted in a vehicle: in the roof, with the body as its shell; in a closed box under the roof, cone up through it; in a
 * closed box on the floor inside the body, cone up; in one that looks down through the floor; in the floor, with the sealed body as its box.
 * The floor is the top of the chassis, or the lower edge of the body where there is none.
 */
export const WAYS = ['roof', 'roof box', 'box up', 'box down', 'floor'] as const;
export type Way = (typeof WAYS)[number];

/** Walls of a closed box, as of every mount of which no others are told. */
export const WALL = USUAL_WALL;
/** What is left above a cone that looks at the inside of the roof: the least that the model of a body around a box asks for. */
export const AIR_ABOVE: Metres = 0.001;

export type Turn = 0 | 90;
export const TURNS: readonly Turn[] = [0, 90];

export function isBoxed(way: Way): way is 'roof box' | 'box up' | 'box down' {
  return way === 'roof box' || way === 'box up' || way === 'box down';
}

export function againstOf(way: Way): Need['against'] {
  return way === 'roof' || way === 'roof box' ? 'roof' : 'floor';
}

/** Where along the length it may be; null where nothing may be cut. */
export function stretchOf(way: Way, vehicle: Vehicle): Span | null {
  switch (way) {
    case 'roof':
    case 'roof box':
      return vehicle.roof ?? null;
    case 'box down':
    case 'floor':
      return vehicle.floor ?? null;
    case 'box up':
      return [0, vehicle.length];
  }
}

/** The frame as it lies: what it takes along and across. */
export function laid({ frame }: { frame: Outline }, turn: Turn): { length: Metres; width: Metres } {
  const lying = turned(frame, turn);
  return { length: outlineLength(lying), width: outlineWidth(lying) };
}

/** Whether it takes the same along as across. */
export function isRoundAbout(speaker: { frame: Outline }): boolean {
  const { length, width } = laid(speaker, 0);
  return length === width;
}

/** How speakers lie in a box: one, or two of a kind side by side, along the length or across it. */
export const ROWS = ['one', 'two along', 'two across'] as const;
export type Row = (typeof ROWS)[number];

/** Inside sizes of the least box that takes a speaker, or two of a kind: the frames lie between its walls. */
export function leastBox(speaker: Speaker, turn: Turn, row: Row = 'one'): Sides {
  const { length, width } = laid(speaker, turn);
  return {
    length: row === 'two along' ? 2 * length : length,
    width: row === 'two across' ? 2 * width : width,
    depth: speaker.depth
  };
}

/** What the least mount of this way takes of the inside of a vehicle. */
export function needOf(way: Way, speaker: Speaker, turn: Turn, vehicle: Vehicle): Need | null {
  const stretch = stretchOf(way, vehicle);
  if (!stretch) return null;
  const against = againstOf(way);
  if (!isBoxed(way))
    return { ...laid(speaker, turn), height: speaker.depth, against, stretch, centred: way === 'roof', turn };
  const { length, width, depth } = leastBox(speaker, turn);
  return {
    length: length + 2 * WALL,
    width: width + 2 * WALL,
    height: depth + WALL + (way === 'box up' ? AIR_ABOVE : 0),
    against,
    stretch,
    centred: false,
    turn
  };
}
