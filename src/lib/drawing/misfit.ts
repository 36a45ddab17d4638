import type { Installation } from '../acoustics/installation.js';
import { cutOf, straightCut } from './cut.js';
import { type Section, sectionOf } from './section.js';

/** A part of the speaker for which a mount has no room, in millimetres of its section. */
export interface Misfit {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** Less is a matter of rounding, in millimetres. */
const LEAST = 0.05;

/**
 * A mount into which its speaker does not fit, cut where that is seen: in the usual plane, or in the other one where it is only
 * there. Without any misfit where nothing of the speaker is out of bounds, as where its body fills a box. Null where there is
 * nothing to draw: sizes that are no sizes.
 */
export function misfitSection(installation: Installation): { section: Section; misfits: Misfit[] } | null {
  const usual = cutOf(installation);
  const planes = [usual, straightCut(usual.plane === 'across' ? 'length' : 'width')];
  const drawn = planes
    .map((cut) => sectionOf(installation, cut))
    .filter(({ bounds, walls }) => Object.values(bounds).every(Number.isFinite) && !walls.includes('NaN'))
    .map((section) => ({ section, misfits: misfitsIn(installation, section) }));
  return drawn.find(({ misfits }) => misfits.length > 0) ?? drawn[0] ?? null;
}

/** What reaches beyond a side wall or an edge, and below the floor of a box. */
function misfitsIn({ mount }: Pick<Installation, 'mount'>, section: Section): Misfit[] {
  if (mount.kind === 'free') return [];
  const { speaker, bounds } = section;
  // A shell has to take the frame between its walls; a plate and a box only the cone.
  const half = (mount.kind === 'shell' ? speaker.frameWidth : speaker.coneWidth) / 2;
  const height = Math.max(3, speaker.depth);
  const [left, right] = mount.kind === 'plate' ? edges(section) : [bounds.left, bounds.right];
  const beyond: Misfit[] = [
    { x: speaker.middle - half, y: 0, width: left - (speaker.middle - half), height },
    { x: right, y: 0, width: speaker.middle + half - right, height }
  ];
  const floor = mount.kind === 'box' ? bounds.bottom : Infinity;
  const magnet = speaker.frameWidth * 0.26;
  beyond.push({ x: speaker.middle - magnet, y: floor, width: 2 * magnet, height: speaker.depth - floor });
  return beyond.filter(({ width, height }) => width > LEAST && height > LEAST);
}

/** Where a plate ends on either side; its handles stand there. */
function edges({ handles }: Section): [number, number] {
  const places = handles.map(({ at: [x] }) => x);
  return [Math.min(...places), Math.max(...places)];
}
