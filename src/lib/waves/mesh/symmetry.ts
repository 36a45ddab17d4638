/** A mirror plane of the geometry: x = 0 or y = 0. */
export type Mirror = 'x' | 'y';

/** One copy of the meshed part: what its coordinates are multiplied by, and the planes it was mirrored in. */
export interface Image {
  sign: readonly [number, number, number];
  mirrored: readonly Mirror[];
}

/** How the fields of a class behave: odd in these planes, even in the others. */
export interface SymmetryClass {
  odd: readonly Mirror[];
  /** +1 or −1 for every image, in the order of `images`. */
  character: Float64Array;
}

/** The copies that make the whole from the meshed part: 1, 2 or 4, the part itself first. */
export function images(mirrors: readonly Mirror[]): Image[] {
  return subsets(mirrors).map((mirrored) => ({
    sign: [mirrored.includes('x') ? -1 : 1, mirrored.includes('y') ? -1 : 1, 1],
    mirrored
  }));
}

/**
 * The classes into which every field on a symmetric geometry falls apart: even or odd in each plane. They do not
 * couple, so that a source anywhere is solved by up to four small systems in place of one large one; a source in
 * the middle excites the even class only.
 */
export function symmetryClasses(mirrors: readonly Mirror[]): SymmetryClass[] {
  const all = images(mirrors);
  return subsets(mirrors).map((odd) => ({
    odd,
    character: Float64Array.from(all, ({ mirrored }) =>
      mirrored.filter((plane) => odd.includes(plane)).length % 2 === 0 ? 1 : -1
    )
  }));
}

function subsets(mirrors: readonly Mirror[]): Mirror[][] {
  let all: Mirror[][] = [[]];
  for (const plane of mirrors) all = [...all, ...all.map((subset) => [...subset, plane])];
  return all;
}
