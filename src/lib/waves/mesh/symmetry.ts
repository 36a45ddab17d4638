import type { Metres } from '../../units.js';

/** An axis of space: 0 is x, 1 is y, 2 is z. */
export type Axis = 0 | 1 | 2;
export type Vector = readonly [number, number, number];

/** A mirror plane at right angles to an axis, beside or through what is meshed; at most one for each axis. */
export interface Mirror {
  axis: Axis;
  /** Where it cuts the axis. */
  at: Metres;
  /**
   * `symmetry`: the surface goes on behind it, and a field is even or odd there. `wall`: an endless hard wall, behind which
   * there are only reflections; a field is even there.
   */
  kind: 'symmetry' | 'wall';
}

/**
 * One copy of the meshed part: x → sign·x + shift on every axis. With R = diag(sign), its normals are R·n and its curls
 * det(R)·R·curl.
 */
export interface Image {
  sign: Vector;
  shift: Vector;
  /** The planes it was mirrored in. */
  mirrored: readonly Mirror[];
}

/** How the fields of a class behave: odd in these planes, even in the others. */
export interface SymmetryClass {
  odd: readonly Mirror[];
  /** +1 or −1 for every image, in the order of `images`. */
  character: Float64Array;
}

/**
 * The copies that the mirrors make of the meshed part, the part itself first: those that make up the whole surface, then
 * their reflections in walls.
 */
export function images(mirrors: readonly Mirror[]): Image[] {
  const walls = mirrors.filter(({ kind }) => kind === 'wall');
  return subsets([...symmetries(mirrors), ...walls]).map((mirrored) => {
    const along = (axis: Axis) => mirrored.find((plane) => plane.axis === axis);
    const [x, y, z] = [along(0), along(1), along(2)];
    return {
      sign: [x ? -1 : 1, y ? -1 : 1, z ? -1 : 1],
      shift: [x ? 2 * x.at : 0, y ? 2 * y.at : 0, z ? 2 * z.at : 0],
      mirrored
    };
  });
}

/** How many of the `images`, the first of them, make up the whole surface. */
export function copies(mirrors: readonly Mirror[]): number {
  return 2 ** symmetries(mirrors).length;
}

/**
 * The classes into which every field on a symmetric geometry falls apart: even or odd in each plane of symmetry. They do
 * not couple, so that a source anywhere is solved by a few small systems in place of one large one; a source in the middle
 * excites the even class only.
 */
export function symmetryClasses(mirrors: readonly Mirror[]): SymmetryClass[] {
  const all = images(mirrors);
  return subsets(symmetries(mirrors)).map((odd) => ({
    odd,
    character: Float64Array.from(all, ({ mirrored }) =>
      mirrored.filter((plane) => odd.includes(plane)).length % 2 === 0 ? 1 : -1
    )
  }));
}

/** Nearer than this to a plane is in it. */
const IN_PLANE: Metres = 1e-9;

/** Whether a node lies in a mirror plane. */
export function liesIn({ axis, at }: Mirror, points: Float64Array, node: number): boolean {
  return Math.abs(points[3 * node + axis] - at) <= IN_PLANE;
}

function symmetries(mirrors: readonly Mirror[]): Mirror[] {
  return mirrors.filter(({ kind }) => kind === 'symmetry');
}

function subsets(mirrors: readonly Mirror[]): Mirror[][] {
  let all: Mirror[][] = [[]];
  for (const plane of mirrors) all = [...all, ...all.map((subset) => [...subset, plane])];
  return all;
}
