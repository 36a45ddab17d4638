import type { Metres, SquareMetres } from '../../units.js';
import type { Patch, PatchArea } from '../mesh/patch.js';
import type { Surface } from '../mesh/surface.js';

/** Nearer than this to the plane of a patch is in it. */
const IN_PLANE: Metres = 1e-9;

export interface PatchMass {
  /** ∫ φ_i·φ_j dS over a patch: for every class the entries of the upper triangle, three numbers each: i, j (unknowns) and value. */
  entries: Float64Array[];
  /** Of the patch as it lies on the surface. */
  area: SquareMetres;
}

/**
 * The mass matrix of the hats over some rectangles of a surface, which need not follow the mesh: every triangle is clipped with
 * them. They are to be symmetric in the planes of symmetry of the surface, as the surface is.
 *
 * @throws RangeError where no part of them lies on the surface
 */
export function patchMass(
  { mesh, images, copies, classes }: Surface,
  { areas, sheet }: Pick<Patch, 'areas' | 'sheet'>
): PatchMass {
  const { points, triangles } = mesh;
  const nodes = points.length / 3;
  const sums = new Map<number, number>();
  for (const { sign, shift } of images.slice(0, copies))
    for (let t = 0; t < triangles.length; t += 3) {
      if (sheet !== undefined && (mesh.sheets?.[triangles[t]] ?? 0) !== sheet) continue;
      const corners = [0, 1, 2].map((i) =>
        [0, 1, 2].map((d) => sign[d] * points[3 * triangles[t + i] + d] + shift[d])
      );
      for (const rectangle of areas)
        addHats(corners, rectangle, (a, b, value) => {
          const [i, j] = [triangles[t + a], triangles[t + b]];
          if (i > j) return;
          const key = i * nodes + j;
          sums.set(key, (sums.get(key) ?? 0) + value / copies);
        });
    }
  if (sums.size === 0) throw new RangeError('the opening does not lie on the surface');
  let area = 0;
  for (const [key, value] of sums) area += value * copies * (Math.floor(key / nodes) === key % nodes ? 1 : 2);
  const entries = classes.map(({ nodes: kept }) => {
    const place = new Map([...kept].map((node, i) => [node, i]));
    const entries: number[] = [];
    for (const [key, value] of sums) {
      const [i, j] = [place.get(Math.floor(key / nodes)), place.get(key % nodes)];
      if (i !== undefined && j !== undefined) entries.push(Math.min(i, j), Math.max(i, j), value);
    }
    return Float64Array.from(entries);
  });
  return { entries, area };
}

/** Gives ∫ φ_a·φ_b of a triangle's hats over the part of it that lies in the rectangle, for all nine pairs. */
function addHats(
  corners: number[][],
  { low, high }: PatchArea,
  add: (a: number, b: number, value: number) => void
): void {
  const normal = [0, 1, 2].find((d) => low[d] === high[d])!;
  if (corners.some((corner) => Math.abs(corner[normal] - low[normal]) > IN_PLANE)) return;
  const [u, v] = [0, 1, 2].filter((d) => d !== normal);
  // each point of the part as the three hats there
  let part: number[][] = [0, 1, 2].map((i) => [0, 1, 2].map((j) => (i === j ? 1 : 0)));
  const at = (hats: number[], d: number) => hats.reduce((sum, share, i) => sum + share * corners[i][d], 0);
  for (const d of [u, v])
    for (const [edge, side] of [
      [low[d], 1],
      [high[d], -1]
    ])
      part = clipped(part, (hats) => side * (at(hats, d) - edge));
  const area = (p: number[], q: number[], r: number[]) =>
    Math.abs((at(q, u) - at(p, u)) * (at(r, v) - at(p, v)) - (at(r, u) - at(p, u)) * (at(q, v) - at(p, v))) /
    2;
  for (let i = 1; i + 1 < part.length; i++) {
    const [p, q, r] = [part[0], part[i], part[i + 1]];
    const weight = area(p, q, r) / 3;
    if (!(weight > 0)) continue;
    // products of two hats are quadratic: the rule of the edge midpoints is exact
    for (const [x, y] of [
      [p, q],
      [q, r],
      [r, p]
    ])
      for (let a = 0; a < 3; a++)
        for (let b = 0; b < 3; b++) add(a, b, (weight * (x[a] + y[a]) * (x[b] + y[b])) / 4);
  }
}

/** The part of a convex polygon where a linear function is at least 0. */
function clipped(part: number[][], side: (hats: number[]) => number): number[][] {
  const out: number[][] = [];
  part.forEach((p, i) => {
    const q = part[(i + 1) % part.length];
    const [sp, sq] = [side(p), side(q)];
    if (sp >= 0) out.push(p);
    if (sp * sq < 0) out.push(p.map((x, d) => x + (sp / (sp - sq)) * (q[d] - x)));
  });
  return out;
}
