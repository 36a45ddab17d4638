import type { Installation } from '../acoustics/installation.js';
import type { SizeKey } from '../acoustics/mounts/size-knobs.js';
import { cutOf, type Cut } from './cut.js';
import { hasOpenings } from '../acoustics/mounts/mount.js';
import { firstAt } from '../acoustics/mounts/second.js';
import { outlineLength, outlineWidth, turned } from '../acoustics/outline.js';
import type { OpeningKey } from '../acoustics/mounts/opening-knobs.js';
import { openingSections, type OpeningSections } from './opening-sections.js';
import { roundedPath, straightPath, type Point } from './point.js';
import { speakerSection, type SpeakerSection } from './speaker-section.js';

/** Where a size can be taken hold of in a section, in millimetres. */
export interface Handle {
  key: SizeKey | OpeningKey;
  at: Point;
  /** Which way a drag makes it grow, and how many millimetres of size a millimetre of drag is. */
  axis: 'x' | 'y';
  gain: number;
}

/** A mount cut through the middle of its cone, in millimetres; y = 0 is the speaker's front. */
export interface Section {
  cut: Cut;
  walls: string;
  speaker: SpeakerSection;
  string: string | null;
  handles: Handle[];
  bounds: { left: number; right: number; top: number; bottom: number };
  /** What lets air through or stands in its way; null where there is nothing of it. */
  openings: OpeningSections | null;
  /** A second speaker, where the cut meets it. */
  second: SpeakerSection | null;
}

/** How far the drawn string keeps off the surface, in millimetres: it lies on it in truth. */
const CLEARANCE = 3.2;

/** Pixels between the drawn string and the foot of words above it: its own thickness, and the tails of letters. */
const ABOVE_STRING = 7;

/** How far above the front of a section words have their line, at so many pixels a millimetre: clear of the string. */
export function wordsAbove(scale: number): number {
  return CLEARANCE * scale + ABOVE_STRING;
}

/** The section in the plane that holds the shortest string, or in another one. */
export function sectionOf(installation: Installation, cut: Cut = cutOf(installation)): Section {
  const bare = bareSection(installation, cut);
  const section = { ...bare, second: secondIn(installation, cut, bare.speaker.middle) };
  if (!hasOpenings(installation.mount)) return section;
  const openings = openingSections(installation, cut, section);
  return {
    ...section,
    handles: [...section.handles, ...openings.handles],
    // A chassis lies across the way.
    string: installation.mount.chassis ? null : section.string,
    bounds: openings.bounds,
    openings
  };
}

/** Nearer to the cut than this share of its own half, a second speaker is drawn as one that is cut through its middle. */
const MET = 0.3;

function secondIn(installation: Installation, cut: Cut, middle: number): SpeakerSection | null {
  const { second, speaker, turn, mount } = installation;
  if (!second) return null;
  const [x, y] = firstAt(mount);
  const [along, aside] = placeIn(cut, [second.at[0] - x, second.at[1] - y]);
  const extent = cut.plane === 'across' ? outlineLength : outlineWidth;
  if (Math.abs(aside) > MET * extent(turned(speaker.cone, turn)) * 500) return null;
  return speakerSection(installation, cut, middle + along);
}

function bareSection(installation: Installation, cut: Cut): Omit<Section, 'second'> {
  const { mount } = installation;
  switch (mount.kind) {
    case 'free':
      return flat(installation, cut, null, 0, []);
    case 'plate': {
      const across = cut.plane === 'across';
      const round = mount.shape === 'round';
      const key = round ? 'diameter' : across ? 'width' : 'length';
      const [x, aside] = placeIn(cut, mount.offset);
      // A round plate is cut through the middle of the cone: off the middle of the plate it is a chord.
      const half = round ? Math.sqrt((mount.diameter * 500) ** 2 - aside ** 2) : sideOf(mount, key) / 2;
      const handle = (at: number): Handle => ({ key, at: [at, 0], axis: 'x', gain: at > 0 ? 2 : -2 });
      return flat(installation, cut, half, x, [handle(-half), handle(half)]);
    }
    case 'shell':
      return shell(installation, cut, mount);
    case 'box': {
      const key = cut.plane === 'across' ? 'width' : 'length';
      const [half, floor] = [mount[key] * 500, mount.depth * 1000];
      const [x] = placeIn(cut, firstAt(mount));
      const speaker = speakerSection(installation, cut, x);
      const rim = speaker.coneWidth / 2;
      return {
        cut,
        walls: straightPath([
          [x - rim, 0],
          [-half, 0],
          [-half, floor],
          [half, floor],
          [half, 0],
          [x + rim, 0]
        ]),
        speaker,
        string: null,
        handles: [
          { key, at: [half, floor / 2], axis: 'x', gain: 2 },
          { key, at: [-half, floor / 2], axis: 'x', gain: -2 },
          { key: 'depth', at: [0, floor], axis: 'y', gain: 1 }
        ],
        bounds: { left: -half, right: half, top: 0, bottom: floor },
        openings: null
      };
    }
  }
}

/** Where the cone's middle lies along a cut, and how far the cut is from the middle of the plate; in millimetres. */
function placeIn({ direction: [dx, dy] }: Cut, [x, y]: readonly [number, number]): [number, number] {
  return [1000 * (x * dx + y * dy), 1000 * (y * dx - x * dy)];
}

function sideOf(mount: { [key in 'width' | 'length' | 'diameter']?: number }, key: string): number {
  return (mount[key as 'width'] ?? 0) * 1000;
}

/** Free air (no half) or a plate reaching `half` to either side of its middle, the speaker at `x`. */
function flat(
  installation: Installation,
  cut: Cut,
  half: number | null,
  x: number,
  handles: Handle[]
): Omit<Section, 'second'> {
  const speaker = speakerSection(installation, cut, x);
  const rim = speaker.coneWidth / 2;
  const edge = half === null ? speaker.frameWidth / 2 : half;
  const end = cut.side * edge;
  const beyond = end + cut.side * CLEARANCE;
  const under = speaker.depth + CLEARANCE * 0.8;
  const inner = x + cut.side * (speaker.frameWidth / 2 + CLEARANCE);
  // Back to the magnet: under the plate as far as the frame, or straight where the frame is the edge.
  const back: Point[] =
    cut.side * (beyond - inner) > CLEARANCE
      ? [
          [inner, CLEARANCE],
          [x + cut.side * speaker.frameWidth * 0.25, under]
        ]
      : [[x + cut.side * speaker.frameWidth * 0.3, under]];
  return {
    cut,
    walls:
      half === null
        ? ''
        : straightPath([
            [-half, 0],
            [x - rim, 0]
          ]) +
          straightPath([
            [x + rim, 0],
            [half, 0]
          ]),
    speaker,
    string: roundedPath(
      [[x, -CLEARANCE], [beyond, -CLEARANCE], [beyond, CLEARANCE], ...back, [x, under]],
      CLEARANCE
    ),
    handles,
    bounds: {
      left: Math.min(-edge, x - speaker.frameWidth / 2),
      right: Math.max(edge, x + speaker.frameWidth / 2),
      top: 0,
      bottom: speaker.depth
    },
    openings: null
  };
}

function shell(
  installation: Installation,
  cut: Cut,
  mount: Extract<Installation['mount'], { kind: 'shell' }>
): Omit<Section, 'second'> {
  const across = cut.plane === 'across';
  const half = (across ? mount.width : mount.length) * 500;
  const x = across ? 0 : mount.offset * 1000;
  const height = mount.height * 1000;
  const walled = across || mount.ends === 'closed';
  const speaker = speakerSection(installation, cut, x);
  const rim = speaker.coneWidth / 2;
  const wall = (side: 1 | -1): Point[] => [
    [x + side * rim, 0],
    [side * half, 0],
    ...(walled ? [[side * half, height] as Point] : [])
  ];
  const edge = cut.side * half;
  const out = edge + cut.side * CLEARANCE;
  const inside = edge - cut.side * CLEARANCE;
  const under = speaker.depth + CLEARANCE * 0.8;
  const route: Point[] = walled
    ? [
        [x, -CLEARANCE],
        [out, -CLEARANCE],
        [out, height + CLEARANCE],
        [inside, height + CLEARANCE],
        [inside, under],
        [x, under]
      ]
    : [
        [x, -CLEARANCE],
        [out, -CLEARANCE],
        [out, CLEARANCE],
        [x + cut.side * (speaker.frameWidth / 2 + CLEARANCE), CLEARANCE],
        [x + cut.side * speaker.frameWidth * 0.25, under],
        [x, under]
      ];
  const key = across ? 'width' : 'length';
  const grip = walled ? height * 0.55 : 0;
  return {
    cut,
    walls: straightPath(wall(-1)) + straightPath(wall(1)),
    speaker,
    string: roundedPath(route, CLEARANCE),
    handles: [
      { key, at: [half, grip], axis: 'x', gain: 2 },
      { key, at: [-half, grip], axis: 'x', gain: -2 },
      { key: 'height', at: [-cut.side * half, height], axis: 'y', gain: 1 }
    ],
    bounds: { left: -half, right: half, top: 0, bottom: height },
    openings: null
  };
}
