import type { Installation } from '../acoustics/installation.js';
import type { Chassis, Mount, ShellMount } from '../acoustics/mounts/mount.js';
import type { OpeningKey } from '../acoustics/mounts/opening-knobs.js';
import { outlineArea } from '../acoustics/outline.js';
import type { Metres } from '../units.js';
import type { Cut } from './cut.js';
import { straightPath, type Point } from './point.js';
import type { Handle, Section } from './section.js';

/** A size that is too small to be seen, and the point that a line leads to. */
export interface Leader {
  at: Point;
  /** Which way from there its figure stands. */
  side: 1 | -1;
  key: OpeningKey;
  value: Metres;
}

/** What lets air through a mount or stands in its way, cut as the mount is; in millimetres. */
export interface OpeningSections {
  /** Drawn as walls are, and as thin lines. */
  walls: string;
  thin: string;
  /** What is full of mechanism. */
  full: string;
  /** Where a wall is broken: holes and slits, drawn over it in the colour of the sheet. */
  breaks: string;
  leaders: Leader[];
  handles: Handle[];
  bounds: Section['bounds'];
}

type Drawn = Partial<Omit<OpeningSections, 'bounds'>> & { bounds?: Partial<Section['bounds']> };

/** The openings of a mount in its section. */
export function openingSections(installation: Installation, cut: Cut, section: Section): OpeningSections {
  const { mount, speaker } = installation;
  const parts: Drawn[] = [];
  if (mount.kind === 'shell' && mount.chassis) parts.push(chassis(mount, mount.chassis, cut, section));
  if (mount.leak && 'gap' in mount.leak) parts.push(frameGap(mount.leak.gap, section));
  if (mount.kind === 'box' && mount.leak && 'hole' in mount.leak)
    parts.push(floorHole(mount.leak.hole, section));
  if (mount.grille) parts.push(grille(mount.grille, outlineArea(speaker.cone), section));
  if (mount.kind === 'box' && mount.body) parts.push(body(mount.body, cut, section));
  const joined = (key: 'walls' | 'thin' | 'full' | 'breaks'): string =>
    parts.map((one) => one[key] ?? '').join('');
  const { bounds } = section;
  const reach = (pick: (...of: number[]) => number, side: keyof Section['bounds']): number =>
    pick(bounds[side], ...parts.map((one) => one.bounds?.[side] ?? bounds[side]));
  return {
    walls: joined('walls'),
    thin: joined('thin'),
    full: joined('full'),
    breaks: joined('breaks'),
    leaders: parts.flatMap(({ leaders = [] }) => leaders),
    handles: parts.flatMap(({ handles = [] }) => handles),
    bounds: {
      left: reach(Math.min, 'left'),
      right: reach(Math.max, 'right'),
      top: reach(Math.min, 'top'),
      bottom: reach(Math.max, 'bottom')
    }
  };
}

/** How wide what stands on a chassis is drawn, as a share of the room. */
const MECHANISM = 0.76;

function chassis(
  shell: ShellMount,
  { height, slit, ends, fill }: Chassis,
  cut: Cut,
  { speaker }: Section
): Drawn {
  const across = cut.plane === 'across';
  const half = (across ? shell.width : shell.length) * 500;
  const gap = (across ? slit : shell.ends === 'open' ? 0 : ends) * 1000;
  const y = (shell.height - height) * 1000;
  const end = half - gap;
  // As much of the room in this cut, as near as a block below the speaker can show it.
  const wide = 2 * half * MECHANISM;
  const tall = Math.min((fill * y) / MECHANISM, Math.max(0, y - speaker.depth - 1.5));
  const key = across ? 'chassis.slit' : 'chassis.ends';
  const isShut = across || shell.ends === 'closed';
  return {
    walls: straightPath([
      [-end, y],
      [end, y]
    ]),
    full: tall > 0.3 ? `M${-wide / 2},${y}v${-tall}h${wide}v${tall}Z` : '',
    leaders: isShut ? [{ at: [half - gap / 2, y], side: 1, key, value: gap / 1000 }] : [],
    // Slits are too narrow to be dragged beside the wall: they are typed.
    handles: [{ key: 'chassis.height', at: [0, y], axis: 'y', gain: -1 }]
  };
}

/** A gap that is not seen at any scale has a break of this width, in millimetres. */
const SEEN = 0.4;

function frameGap(gap: Metres, { speaker: { middle, frameWidth, coneWidth } }: Section): Drawn {
  const at = (side: 1 | -1): number => middle + (side * (frameWidth + coneWidth)) / 4;
  const wide = Math.max(SEEN, 1000 * gap);
  const across = (x: number): string => `M${x - wide / 2},0h${wide}`;
  return {
    breaks: across(at(1)) + across(at(-1)),
    leaders: [{ at: [at(-1), 0], side: -1, key: 'leak.gap', value: gap }]
  };
}

function floorHole(hole: Metres, { bounds }: Section): Drawn {
  return {
    breaks: `M${-500 * hole},${bounds.bottom}h${1000 * hole}`,
    leaders: [{ at: [500 * hole, bounds.bottom], side: 1, key: 'leak.hole', value: hole }]
  };
}

function grille(
  { holes, diameter, cavity }: NonNullable<Mount['grille']>,
  coneArea: number,
  { speaker: { middle, coneWidth } }: Section
): Drawn {
  const y = -1000 * cavity;
  const [left, right] = [middle - coneWidth / 2, middle + coneWidth / 2];
  // As many in a row as the pitch of so many over the cone makes.
  const row = Math.max(1, Math.round(coneWidth / (1000 * Math.sqrt(coneArea / holes))));
  const pitch = coneWidth / row;
  const solid = Math.max(0, pitch - 1000 * diameter);
  const starts = Array.from({ length: row + 1 }, (_, i) => left + i * pitch);
  const bars = starts.map((x) => `M${Math.max(left, x - solid / 2)},${y}H${Math.min(right, x + solid / 2)}`);
  return {
    thin: `M${left},0V${y}M${right},0V${y}`,
    walls: bars.join(''),
    leaders: [{ at: [left + pitch / 2, y], side: -1, key: 'grille.diameter', value: diameter }],
    handles: [{ key: 'grille.cavity', at: [right, y], axis: 'y', gain: -1 }],
    bounds: { top: y }
  };
}

function body(
  { length, width, height, openings }: NonNullable<Mount['body']>,
  cut: Cut,
  { bounds }: Section
): Drawn {
  const across = cut.plane === 'across';
  const half = (across ? width : length) * 500;
  const middle = (bounds.top + bounds.bottom) / 2;
  const [top, bottom] = [middle - 500 * height, middle + 500 * height];
  // They lie along both long sides, half on each: what a cut across shows of them.
  const open = across ? Math.min(1000 * height, (openings / 2 / length) * 1000) / 2 : 0;
  const side = (x: number): string => `M${x},${top}V${middle - open}M${x},${middle + open}V${bottom}`;
  const key = across ? 'body.width' : 'body.length';
  return {
    walls: `${straightPath([
      [-half, top],
      [half, top]
    ])}${straightPath([
      [-half, bottom],
      [half, bottom]
    ])}${side(-half)}${side(half)}`,
    handles: [
      { key, at: [half, bottom - 3], axis: 'x', gain: 2 },
      { key, at: [-half, bottom - 3], axis: 'x', gain: -2 },
      { key: 'body.height', at: [-half / 2, bottom], axis: 'y', gain: 2 }
    ],
    bounds: { left: -half, right: half, top, bottom }
  };
}
