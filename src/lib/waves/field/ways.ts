import type { Listener } from '../../acoustics/listener.js';
import type { Metres } from '../../units.js';
import type { Vector } from '../mesh/symmetry.js';
import type { WaveProblem } from '../solve/wave-problem.js';
import { listenerDirection } from './listener-point.js';

/** A way on which sound comes to a listener: straight from the mount, or by the board. */
export interface Way {
  /** The unit vector from the middle of the cone to the listener, or to the listener's mirror image in the board. */
  direction: Vector;
  /** The distance on this way; none in the far field. */
  distance?: Metres;
  /** By how much it is longer than the straight way, and the ratio of the straight one to it. */
  longer: Metres;
  ratio: number;
}

/** The board under a problem's mount, as the mesh sees it. */
export interface BoardSeen {
  /** Where it cuts the z axis. */
  at: Metres;
  /** Up along z of the mesh: −1 where the mount is turned over, so that its cone looks down. */
  up: 1 | -1;
  /** Of the middle of the cones over it. */
  height: Metres;
}

export function boardOf({ surface, middle }: Pick<WaveProblem, 'surface' | 'middle'>): BoardSeen | null {
  const wall = surface.mesh.mirrors.find(({ axis, kind }) => axis === 2 && kind === 'wall');
  if (!wall) return null;
  return { at: wall.at, up: middle[2] > wall.at ? 1 : -1, height: Math.abs(middle[2] - wall.at) };
}

/**
 * The ways to a listener; none to one below the board. By the board is the way to the listener's mirror image: what the mount's
 * reflection sends to the listener, the mount itself sends there. Each of the two varies more slowly with frequency than their sum,
 * in which they beat.
 */
export function waysTo(problem: Pick<WaveProblem, 'surface' | 'middle'>, listener: Listener): Way[] {
  const { distance } = listener;
  const board = boardOf(problem);
  if (!board) return [{ direction: listenerDirection(listener), distance, longer: 0, ratio: 1 }];
  const { up, height } = board;
  const direction = listenerDirection(listener, up);
  const [x, y, z] = direction;
  // of the listener over the cone, as a share of the distance
  const rise = up * z;
  if (distance === undefined) {
    if (rise < -1e-12) return [];
    return [
      { direction, longer: 0, ratio: 1 },
      { direction: [x, y, -z], longer: 2 * height * rise, ratio: 1 }
    ];
  }
  if (height + distance * rise < 0) return [];
  const mirrored = [distance * x, distance * y, -distance * z - 2 * height * up] as const;
  const far = Math.hypot(...mirrored);
  return [
    { direction, distance, longer: 0, ratio: 1 },
    {
      direction: [mirrored[0] / far, mirrored[1] / far, mirrored[2] / far],
      distance: far,
      longer: far - distance,
      ratio: distance / far
    }
  ];
}
