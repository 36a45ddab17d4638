import { outlineLength, outlineWidth, turned } from '../acoustics/outline.js';
import type { Installation } from '../acoustics/installation.js';
import type { Cut } from './cut.js';
import { straightPath, type Point } from './point.js';

/** A speaker cut through its middle, front up at y = 0, as three paths in millimetres. */
export interface SpeakerSection {
  frame: string;
  cone: string;
  magnet: string;
  /** Where its middle lies, and how wide it is. */
  middle: number;
  frameWidth: number;
  coneWidth: number;
  depth: number;
}

export function speakerSection({ speaker, turn }: Installation, cut: Cut, x: number): SpeakerSection {
  const extent = cut.plane === 'across' ? outlineWidth : outlineLength;
  const frameWidth = extent(turned(speaker.frame, turn)) * 1000;
  const coneWidth = extent(turned(speaker.cone, turn)) * 1000;
  const depth = speaker.depth * 1000;
  const mirrored = (points: Point[]): string =>
    straightPath(points.map(([dx, y]): Point => [x - dx, y])) +
    straightPath(points.map(([dx, y]): Point => [x + dx, y]));
  const [rim, coil, magnet] = [frameWidth / 2, coneWidth * 0.15, Math.min(frameWidth * 0.26, depth * 0.6)];
  return {
    frame: mirrored([
      [coneWidth / 2, 0],
      [rim, 0],
      [rim * 0.93, depth * 0.12],
      [magnet, depth * 0.58],
      [magnet, depth]
    ]),
    // one line from rim to rim, so that the hollow before it can be filled
    cone: `M${x - coneWidth / 2},0L${x - coil},${depth * 0.46}Q${x},${depth * 0.2} ${x + coil},${depth * 0.46}L${x + coneWidth / 2},0`,
    magnet: `M${x - magnet},${depth * 0.6}H${x + magnet}V${depth}H${x - magnet}Z`,
    middle: x,
    frameWidth,
    coneWidth,
    depth
  };
}
