import { outlineLength, outlineWidth } from '../acoustics/outline.js';
import type { Speaker } from '../acoustics/speaker/speaker.js';
import { straightPath, type Point } from './point.js';

/** What of a speaker a figure belongs to. */
export type SpeakerPart =
  | 'frameLength'
  | 'frameWidth'
  | 'coneLength'
  | 'coneWidth'
  | 'depth'
  | 'body'
  | 'travel'
  | 'mass'
  | 'surround'
  | 'friction'
  | 'magnet'
  | 'coil'
  | 'heat';

/** A speaker cut along its length, front up at y = 0, its middle at x = 0; in millimetres. */
export interface SpeakerDrawing {
  frame: string;
  basket: string;
  surround: string;
  cone: string;
  cap: string;
  former: string;
  /** The windings, left and right, as rectangles. */
  coil: { x: number; y: number; width: number; height: number }[];
  /** Pot and pole of the magnet: iron, and the magnet itself between. */
  iron: string;
  magnet: string;
  /** The cap at the ends of the largest excursion. */
  travel: { x: number; from: number; to: number };
  /** A line as long as it is deep, beside it. */
  depthLine: string;
  depth: number;
  halfLength: number;
  /** How far it rises over the front of its frame: the roll, or the cap at its largest excursion. */
  above: number;
  /** The point of each part that a leader ends at; those of widths lie in the view from the front. */
  at: Record<Exclude<SpeakerPart, 'frameLength' | 'frameWidth' | 'coneLength' | 'coneWidth'>, Point>;
}

/**
 * Draws a speaker to scale from its sizes. Coil, magnet and surround, which no size tells, have the proportions that they usually have (common
 * practice); the cone counts to the middle of its surround.
 */
export function speakerDrawing({
  frame,
  cone,
  depth: metres,
  motor
}: Pick<Speaker, 'frame' | 'cone' | 'depth'> & { motor?: Pick<Speaker['motor'], 'xmax'> }): SpeakerDrawing {
  const [rim, edge] = [outlineLength(frame) * 500, outlineLength(cone) * 500];
  const depth = metres * 1000;
  const xmax = (motor?.xmax ?? 0) * 1000;
  const short = Math.min(edge, outlineWidth(cone) * 500, outlineWidth(frame) * 500);
  const roll = Math.min(0.12 * short, 0.2 * depth, Math.max(rim - edge, 0.04 * short));
  const bore = Math.min(0.42 * short, depth * 0.9);
  const thick = 0.05 * depth;
  const [neck, top, ironTop, ironFoot] = [0.36 * depth, 0.3 * depth, 0.56 * depth, 0.68 * depth];
  const wall = Math.min(Math.max(bore * 1.9, bore + 0.2 * depth), rim * 0.85);
  const gap = Math.max(0.12, 0.07 * bore);
  const [inside, outside] = [bore - gap, bore + gap];
  const aside = 0.06 * rim;
  const inner = edge - roll;
  const outer = Math.min(edge + roll, rim);
  const winding = { width: gap * 1.1, height: 0.2 * depth, y: 0.52 * depth };
  const both = (points: Point[]): string =>
    straightPath(points) + straightPath(points.map(([x, y]): Point => [-x, y]));
  const box = (left: number, right: number, up: number, down: number): string =>
    `M${left},${up}H${right}V${down}H${left}Z`;
  const capTop = top - 0.16 * depth;
  return {
    frame: box(outer, rim, 0, thick) + box(-rim, -outer, 0, thick),
    basket: both([
      [rim * 0.97, thick],
      [Math.max(wall, rim * 0.86), 0.42 * depth],
      [wall, ironTop]
    ]),
    surround: [1, -1]
      .map(
        (side) =>
          `M${side * inner},0A${(outer - inner) / 2},${roll} 0 0 ${side > 0 ? 1 : 0} ${side * outer},0`
      )
      .join(''),
    cone: both([
      [inner, 0],
      [bore, neck]
    ]),
    cap: `M${-bore},${neck}Q0,${2 * capTop - neck} ${bore},${neck}`,
    former: both([
      [bore, neck],
      [bore, winding.y + winding.height]
    ]),
    coil: [bore, -bore].map((x) => ({ ...winding, x: x - winding.width / 2 })),
    iron:
      box(outside, wall, ironTop, ironFoot) +
      box(-wall, -outside, ironTop, ironFoot) +
      `M${-inside},${0.54 * depth}H${inside}V${0.88 * depth}H${wall}V${depth}H${-wall}V${0.88 * depth}H${-inside}Z`,
    magnet:
      box(bore + 2.2 * gap, wall * 0.97, ironFoot, 0.88 * depth) +
      box(-wall * 0.97, -bore - 2.2 * gap, ironFoot, 0.88 * depth),
    travel: { x: 0, from: capTop - xmax, to: capTop + xmax },
    depthLine: `M${-rim - aside},0V${depth}M${-rim - 1.5 * aside},0h${aside}M${-rim - 1.5 * aside},${depth}h${aside}`,
    depth,
    halfLength: rim,
    above: Math.max(roll, xmax - capTop, 0),
    at: {
      depth: [-rim - aside, 0.75 * depth],
      body: [-(Math.max(wall, rim * 0.86) + wall) / 2, 0.49 * depth],
      travel: [0, capTop],
      mass: [-(inner + bore) / 2, neck / 2],
      surround: [(inner + outer) / 2, -roll],
      friction: [outer, 0],
      magnet: [(bore + 2.2 * gap + wall) / 2, (ironFoot + 0.88 * depth) / 2],
      coil: [bore, winding.y + 0.15 * winding.height],
      heat: [bore, winding.y + 0.85 * winding.height]
    }
  };
}
