import { outlineLength, outlineWidth } from '../outline.js';
import type { Installation } from '../installation.js';
import type { Mount } from './mount.js';
import { turned } from '../outline.js';
import type { Metres } from '../../units.js';

/** A size of the mount itself. */
export type SizeKey = 'length' | 'width' | 'height' | 'depth' | 'diameter' | 'offsetLength' | 'offsetWidth';

/** One size that the user can turn, drag, step or type. */
export interface Knob<Key extends string = SizeKey> {
  /** What it turns. */
  key: Key;
  label: string;
  min: Metres;
  max: Metres;
  step: Metres;
  value: Metres;
}

/** The longest sizes the knobs reach; a file may bring a larger one, and its knob then reaches that far. */
const REACH = {
  plate: 0.2,
  shellLength: 0.4,
  shellWidth: 0.1,
  shellHeight: 0.1,
  boxSide: 0.12,
  boxDepth: 0.06
};

const STEP = 0.001;

function size(key: SizeKey, label: string, value: Metres, min: Metres, max: Metres): Knob {
  return { key, label, value, min: Math.min(min, value), max: Math.max(max, value), step: STEP };
}

function offset(key: 'offsetLength' | 'offsetWidth', label: string, value: Metres, room: Metres): Knob {
  const reach = Math.max(room, 0);
  return { key, label, value, min: Math.min(-reach, value), max: Math.max(reach, value), step: STEP };
}

/** How far off the middle one way where it is so far off the other way, inside a circle. */
function chord(radius: Metres, other: Metres): Metres {
  return Math.sqrt(Math.max(0, radius * radius - other * other));
}

/** Rounds up to whole millimetres, so that a knob's end is a size one can cut. */
export function upToMillimetre(length: Metres): Metres {
  return Math.ceil(length * 1000 - 1e-6) / 1000;
}

/**
 * The knobs of an installation with their ranges. A mount can be made as small as the speaker's rim:
 * below that the frame itself would stick out.
 */
export function knobsOf({ speaker, mount, turn }: Installation): Knob[] {
  const frame = turned(speaker.frame, turn);
  const rimLength = upToMillimetre(outlineLength(frame));
  const rimWidth = upToMillimetre(outlineWidth(frame));
  switch (mount.kind) {
    case 'free':
      return [];
    case 'plate':
      if (mount.shape === 'round') {
        const corner = upToMillimetre(
          frame.shape === 'round' ? rimLength : Math.hypot(outlineLength(frame), outlineWidth(frame))
        );
        const room = (mount.diameter - corner) / 2;
        return [
          size(
            'diameter',
            'diameter',
            mount.diameter,
            corner + 2 * Math.hypot(mount.offset[0], mount.offset[1]),
            REACH.plate
          ),
          offset('offsetLength', 'speaker, along', mount.offset[0], chord(room, mount.offset[1])),
          offset('offsetWidth', 'speaker, across', mount.offset[1], chord(room, mount.offset[0]))
        ];
      }
      return [
        size('width', 'width', mount.width, rimWidth + 2 * Math.abs(mount.offset[1]), REACH.plate),
        size('length', 'length', mount.length, rimLength + 2 * Math.abs(mount.offset[0]), REACH.plate),
        offset('offsetLength', 'speaker, along', mount.offset[0], (mount.length - rimLength) / 2),
        offset('offsetWidth', 'speaker, across', mount.offset[1], (mount.width - rimWidth) / 2)
      ];
    case 'shell':
      return [
        size('height', 'height inside', mount.height, upToMillimetre(speaker.depth), REACH.shellHeight),
        size('width', 'width inside', mount.width, rimWidth, REACH.shellWidth),
        size(
          'length',
          'length inside',
          mount.length,
          rimLength + 2 * Math.abs(mount.offset),
          REACH.shellLength
        ),
        offset('offsetLength', 'speaker, along', mount.offset, (mount.length - rimLength) / 2)
      ];
    case 'box':
      return [
        size('depth', 'depth inside', mount.depth, upToMillimetre(speaker.depth + 0.002), REACH.boxDepth),
        size('width', 'width inside', mount.width, rimWidth, REACH.boxSide),
        size('length', 'length inside', mount.length, rimLength, REACH.boxSide)
      ];
  }
}

/** The mount with one of its sizes set. Offsets that no longer fit are left to the check, not moved silently. */
export function withKnob(mount: Mount, key: SizeKey, turnedTo: Metres): Mount {
  // No −0: a file would give it back as 0.
  const value = turnedTo + 0;
  switch (key) {
    case 'offsetLength':
      if (mount.kind === 'plate') return { ...mount, offset: [value, mount.offset[1]] };
      if (mount.kind === 'shell') return { ...mount, offset: value };
      return mount;
    case 'offsetWidth':
      return mount.kind === 'plate' ? { ...mount, offset: [mount.offset[0], value] } : mount;
    default:
      return { ...mount, [key]: value } as Mount;
  }
}
