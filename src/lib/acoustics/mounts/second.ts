import type { Metres } from '../../units.js';
import { outlineContains, outlineLength, outlineWidth, turned, type Outline } from '../outline.js';
import type { Wiring } from '../speaker/driven-cones.js';
import { checkLength, LIMITS, mm, size } from '../limits.js';
import type { Installation } from '../installation.js';
import type { Mount } from './mount.js';

/** A second speaker of the same kind in the same mount, lying as the first one does. */
export interface Second extends Wiring {
  /** The middle of its cone, from the middle of plate, roof or front: along the length, across the width. */
  at: readonly [Metres, Metres];
}

/** Where the first cone's middle is, from the middle of plate, roof or front. */
export function firstAt(mount: Mount): readonly [Metres, Metres] {
  if (mount.kind === 'plate') return mount.offset;
  if (mount.kind === 'box') return mount.offset ?? [0, 0];
  return mount.kind === 'shell' ? [mount.offset, 0] : [0, 0];
}

/** The same mount with the first cone where the second one is, and no second one. */
export function asSeenBySecond(installation: Installation): Installation {
  const { mount, second } = installation;
  const bare = { ...installation };
  delete bare.second;
  if (!second || mount.kind === 'free') return bare;
  const moved =
    mount.kind === 'shell'
      ? { ...mount, offset: second.at[0] }
      : { ...mount, offset: [...second.at] as [Metres, Metres] };
  return { ...bare, mount: moved };
}

/**
 * @throws RangeError for a second speaker in free air, one over the first, one over the edge of plate, roof or front, and for a
 *   wiring that is none
 */
export function checkSecond({ speaker, mount, turn, second }: Installation): void {
  if (!second) return;
  const { at, wiring, reversed } = second;
  if (wiring !== 'parallel' && wiring !== 'series')
    throw new RangeError(`a second speaker must be wired in parallel or in series, got ${String(wiring)}`);
  if (typeof reversed !== 'boolean')
    throw new RangeError(
      `whether the second speaker is reversed must be true or false, got ${String(reversed)}`
    );
  if (mount.kind === 'free')
    throw new RangeError('in free air nothing holds a second speaker: it needs a plate, a shell or a box');
  for (const [what, place] of [
    ['along the length', at[0]],
    ['across the width', at[1]]
  ] as const)
    checkLength(`place of the second speaker ${what}`, place, [
      -LIMITS.mountLength[1],
      LIMITS.mountLength[1]
    ]);
  const frame = turned(speaker.frame, turn);
  const cone = turned(speaker.cone, turn);
  const first = firstAt(mount);
  if (overlaps(frame, [at[0] - first[0], at[1] - first[1]]))
    throw new RangeError(
      `the second speaker lies over the first: their frames (${size(frame)}) are ${mm(Math.hypot(at[0] - first[0], at[1] - first[1]))} mm apart from middle to middle`
    );
  const over = faceOf(mount);
  const [thing, what] = laidOn(mount, frame, cone);
  if (!outlineContains(over, thing, at))
    throw new RangeError(
      `the ${what} of the second speaker (${size(thing)}), ${mm(at[0])} and ${mm(at[1])} mm from the middle, reaches over the edge of the ${surfaceName(mount)} (${size(over)})`
    );
}

/** Plate, roof or front, on which the cones lie. */
export function faceOf(mount: Exclude<Mount, { kind: 'free' }>): Outline {
  return mount.kind === 'plate' ? mount : { shape: 'rectangle', length: mount.length, width: mount.width };
}

/** What has to lie within the face: on a plate the cone, as with the first speaker; in a shell of closed ends the frame. */
function laidOn(mount: Mount, frame: Outline, cone: Outline): [Outline, 'frame' | 'cone'] {
  // a box may be smaller than the frame round its cone, and a frame may hang over an open end
  return mount.kind === 'shell' && mount.ends === 'closed' ? [frame, 'frame'] : [cone, 'cone'];
}

function surfaceName({ kind }: Mount): string {
  return { free: 'frame', plate: 'plate', shell: 'roof', box: 'front' }[kind];
}

/** Whether two equal frames, so far apart from middle to middle, lie over each other; touching they do not. */
function overlaps(frame: Outline, [x, y]: readonly [Metres, Metres]): boolean {
  const [across, along] = [Math.abs(x) / outlineLength(frame), Math.abs(y) / outlineWidth(frame)];
  const apart = frame.shape === 'rectangle' ? Math.max(across, along) : Math.hypot(across, along);
  return apart < 1 - 1e-9;
}
