import type { Installation } from '../acoustics/installation.js';
import type { Board } from '../acoustics/mounts/board.js';
import type { Mount } from '../acoustics/mounts/mount.js';
import type { Second } from '../acoustics/mounts/second.js';
import type { Speaker } from '../acoustics/speaker/speaker.js';
import type { CubicMetres, Metres } from '../units.js';
import type { Block, Span } from './block.js';
import type { RoomInside } from './room-inside.js';
import { spaceTaken } from './space-taken.js';
import type { Vehicle } from './vehicle.js';
import { isRoundAbout, type Turn, type Way } from './ways.js';

/** A mount that fits into a vehicle, as plain as a setup on the shelf, and where in the vehicle it is. */
export interface Candidate {
  /** Tells it from all others of its vehicle. */
  key: string;
  /** What it is called, with its sizes in millimetres. */
  name: string;
  /** Key of its speaker. */
  speaker: string;
  way: Way;
  mount: Mount;
  turn: Turn;
  above: Metres;
  facing: Board['facing'];
  second?: Second;
  /** Where it lies in the inside. */
  takes: readonly Block[];
  /** What it takes away of the inside. */
  space: CubicMetres;
}

/** A speaker that is to be put into a vehicle in one way. */
export interface Asked {
  vehicle: Vehicle;
  room: RoomInside;
  key: string;
  speaker: Speaker;
  way: Way;
  /** How two of them are wired. */
  wiring: Second['wiring'];
  /** The largest free blocks for boxes of this way. */
  blocks: readonly Block[];
}

/** With the key that tells it from all others, and what it takes. */
export function made(candidate: Omit<Candidate, 'key' | 'space'>, inside: Speaker): Candidate {
  const { speaker, way, mount, turn, above, second } = candidate;
  return {
    ...candidate,
    space: spaceTaken(way, installed(candidate, inside)),
    key: JSON.stringify([speaker, way, mount, turn, above, second?.at])
  };
}

/** The candidate with its speaker in, over its board. */
export function installed(
  { mount, turn, above, facing, second }: Omit<Candidate, 'key' | 'space'>,
  speaker: Speaker
): Installation {
  return { speaker, mount, turn, board: { above, facing }, ...(second && { second }) };
}

/** What a name says of a frame that lies across. */
export function across(speaker: Speaker, turn: Turn): string {
  return turn === 90 && !isRoundAbout(speaker) ? ', turned across' : '';
}

/** The point of a span that is nearest to another. */
export function nearest([from, until]: Span, to: Metres): Metres {
  return Math.min(until, Math.max(from, to));
}

/** Without the last digits that reckoning leaves: a billionth of a metre is no size. */
export function tidy(length: Metres): Metres {
  const exact = Math.round(length * 1e9) / 1e9;
  return exact === 0 ? 0 : exact;
}
