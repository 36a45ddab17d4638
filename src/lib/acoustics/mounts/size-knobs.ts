import { outlineLength, outlineWidth } from '../outline.js';
import type { Installation } from '../installation.js';
import { largestBox } from './check-openings.js';
import type { BoxMount, Mount } from './mount.js';
import { turned } from '../outline.js';
import type { Metres } from '../../units.js';

/** A size of the mount itself. */
export type SizeKey = 'length' | 'width' | 'height' | 'depth' | 'diameter' | 'offsetLength' | 'offsetWidth';

/** One size that the user can turn, drag, step or type. */
export interface Knob<Key extends string = SizeKey> {
  /** What it turns. */
  key: Key;
  label: string;
  /** What it is a quantity of, in SI units: a length unless told. */
  quantity?: 'gap' | 'share' | 'count' | 'area';
  min: number;
  max: number;
  step: number;
  value: number;
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
/** What is left between what must not touch. */
const CLEAR: Metres = 0.001;

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
export function knobsOf({ speaker, mount, turn, second }: Installation): Knob[] {
  const frame = turned(speaker.frame, turn);
  // What a second speaker takes, from the middle to both sides.
  const [secondLength, secondWidth] = second
    ? [
        2 * Math.abs(second.at[0]) + outlineLength(frame),
        2 * Math.abs(second.at[1]) + outlineWidth(frame)
      ].map(upToMillimetre)
    : [0, 0];
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
            Math.max(
              corner + 2 * Math.hypot(mount.offset[0], mount.offset[1]),
              second ? corner + 2 * Math.hypot(...second.at) : 0
            ),
            REACH.plate
          ),
          offset('offsetLength', 'speaker, along', mount.offset[0], chord(room, mount.offset[1])),
          offset('offsetWidth', 'speaker, across', mount.offset[1], chord(room, mount.offset[0]))
        ];
      }
      return [
        size(
          'width',
          'width',
          mount.width,
          Math.max(rimWidth + 2 * Math.abs(mount.offset[1]), secondWidth),
          REACH.plate
        ),
        size(
          'length',
          'length',
          mount.length,
          Math.max(rimLength + 2 * Math.abs(mount.offset[0]), secondLength),
          REACH.plate
        ),
        offset('offsetLength', 'speaker, along', mount.offset[0], (mount.length - rimLength) / 2),
        offset('offsetWidth', 'speaker, across', mount.offset[1], (mount.width - rimWidth) / 2)
      ];
    case 'shell': {
      const { chassis } = mount;
      const least = chassis ? speaker.depth + chassis.height + CLEAR : speaker.depth;
      return [
        size('height', 'height inside', mount.height, upToMillimetre(least), REACH.shellHeight),
        size(
          'width',
          'width inside',
          mount.width,
          Math.max(rimWidth, secondWidth, chassis ? upToMillimetre(2 * chassis.slit + CLEAR) : 0),
          REACH.shellWidth
        ),
        size(
          'length',
          'length inside',
          mount.length,
          Math.max(
            rimLength + 2 * Math.abs(mount.offset),
            secondLength,
            chassis ? upToMillimetre(2 * chassis.ends + CLEAR) : 0
          ),
          REACH.shellLength
        ),
        offset('offsetLength', 'speaker, along', mount.offset, (mount.length - rimLength) / 2)
      ];
    }
    case 'box': {
      const most = mount.body ? largestBox(mount.body) : null;
      const hole = mount.leak && 'hole' in mount.leak ? upToMillimetre(mount.leak.hole) : 0;
      const [along, across] = mount.offset ?? [0, 0];
      return [
        size(
          'depth',
          'depth inside',
          mount.depth,
          upToMillimetre(speaker.depth + 0.002),
          Math.min(REACH.boxDepth, most?.depth ?? Infinity)
        ),
        size(
          'width',
          'width inside',
          mount.width,
          Math.max(rimWidth + 2 * Math.abs(across), secondWidth, hole),
          Math.min(REACH.boxSide, most?.width ?? Infinity)
        ),
        size(
          'length',
          'length inside',
          mount.length,
          Math.max(rimLength + 2 * Math.abs(along), secondLength, hole),
          Math.min(REACH.boxSide, most?.length ?? Infinity)
        ),
        offset('offsetLength', 'speaker, along', along, (mount.length - rimLength) / 2),
        offset('offsetWidth', 'speaker, across', across, (mount.width - rimWidth) / 2)
      ];
    }
  }
}

/** The mount with one of its sizes set. Offsets that no longer fit are left to the check, not moved silently. */
export function withKnob(mount: Mount, key: SizeKey, turnedTo: Metres): Mount {
  // No −0: a file would give it back as 0.
  const value = turnedTo + 0;
  switch (key) {
    case 'offsetLength':
      if (mount.kind === 'plate') return { ...mount, offset: [value, mount.offset[1]] };
      if (mount.kind === 'box') return offMiddle(mount, [value, mount.offset?.[1] ?? 0]);
      if (mount.kind === 'shell') return { ...mount, offset: value };
      return mount;
    case 'offsetWidth':
      if (mount.kind === 'box') return offMiddle(mount, [mount.offset?.[0] ?? 0, value]);
      return mount.kind === 'plate' ? { ...mount, offset: [mount.offset[0], value] } : mount;
    default:
      return { ...mount, [key]: value } as Mount;
  }
}

/** A box with its cone there; in the middle it says nothing of it. */
function offMiddle(box: BoxMount, [x, y]: [Metres, Metres]): BoxMount {
  const moved: BoxMount = { ...box, offset: [x, y] };
  if (x === 0 && y === 0) delete moved.offset;
  return moved;
}
