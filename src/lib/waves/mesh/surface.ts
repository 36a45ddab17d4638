import { copies, images, liesIn, symmetryClasses, type Image, type SymmetryClass } from './symmetry.js';
import type { TriangleMesh } from './triangle-mesh.js';

/**
 * What the assembly needs to know of a mesh. The unknown is the pressure jump at the nodes, linear on every triangle
 * (hat functions φ) and 0 on free edges.
 */
export interface Surface {
  mesh: TriangleMesh;
  images: Image[];
  /** So many of the images, the first, make up the surface; the others are its reflections in walls. */
  copies: number;
  classes: SurfaceClass[];
  /** Whether there is a free edge; without one the surface is closed. */
  open: boolean;
  /** Per triangle. */
  area: Float64Array;
  /** Unit normal, three numbers a triangle. */
  normal: Float64Array;
  /** curl φ = (opposite edge)/(2·area) of the three hats, nine numbers a triangle. */
  curl: Float64Array;
  quadrature: NodeQuadrature;
}

/** A symmetry class with its own unknowns: nodes on a free edge, or on a plane in which it is odd, have none. */
export interface SurfaceClass extends SymmetryClass {
  /** Node of every unknown. */
  nodes: Int32Array;
}

/**
 * A rule ∫ f·φ_i dS ≈ Σ_p w_ip·f(x_p) for smooth f, with the nodes as points: the mean of the lumped and of the
 * consistent mass matrix (docs/models/wave-solution.md). Points of a fold stand once for every normal.
 */
export interface NodeQuadrature {
  /** x, y, z of every point. */
  points: Float64Array;
  /** Unit normal at every point. */
  normals: Float64Array;
  /** The rows w_i, one a node of the mesh, in compressed form: entries start[i] … start[i + 1] − 1. */
  start: Int32Array;
  point: Int32Array;
  weight: Float64Array;
}

/** @param mesh every triangle of non-zero area, normals consistent */
export function surfaceOf(mesh: TriangleMesh): Surface {
  const { points, triangles, mirrors } = mesh;
  const count = triangles.length / 3;
  const area = new Float64Array(count);
  const normal = new Float64Array(3 * count);
  const curl = new Float64Array(9 * count);
  for (let t = 0; t < count; t++) {
    const corner = [0, 1, 2].map((i) => {
      const p = 3 * triangles[3 * t + i];
      return [points[p], points[p + 1], points[p + 2]];
    });
    const [u, v] = [1, 2].map((i) => corner[i].map((x, d) => x - corner[0][d]));
    const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    const twice = Math.hypot(n[0], n[1], n[2]);
    area[t] = twice / 2;
    for (let d = 0; d < 3; d++) {
      normal[3 * t + d] = n[d] / twice;
      for (let i = 0; i < 3; i++)
        curl[9 * t + 3 * i + d] = (corner[(i + 2) % 3][d] - corner[(i + 1) % 3][d]) / twice;
    }
  }
  const free = freeNodes(mesh);
  const classes = symmetryClasses(mirrors).map((symmetry) => ({
    ...symmetry,
    nodes: Int32Array.from(
      [...free.keys()].filter(
        (node) =>
          !free[node] && !mesh.idle?.[node] && !symmetry.odd.some((plane) => liesIn(plane, points, node))
      )
    )
  }));
  return {
    mesh,
    images: images(mirrors),
    copies: copies(mirrors),
    classes,
    open: free.includes(1),
    area,
    normal,
    curl,
    quadrature: nodeQuadrature(mesh, area, normal)
  };
}

/** 1 for nodes on a free edge: one that belongs to one triangle only and does not lie in a mirror plane. */
function freeNodes({ points, triangles, mirrors }: TriangleMesh): Uint8Array {
  const uses = new Map<number, number>();
  const nodes = points.length / 3;
  for (let t = 0; t < triangles.length; t += 3)
    for (let i = 0; i < 3; i++) {
      const [a, b] = [triangles[t + i], triangles[t + ((i + 1) % 3)]];
      const key = Math.min(a, b) * nodes + Math.max(a, b);
      uses.set(key, (uses.get(key) ?? 0) + 1);
    }
  const free = new Uint8Array(nodes);
  for (const [key, times] of uses) {
    const [a, b] = [Math.floor(key / nodes), key % nodes];
    const inPlane = mirrors.some((plane) => liesIn(plane, points, a) && liesIn(plane, points, b));
    if (times === 1 && !inPlane) free[a] = free[b] = 1;
  }
  return free;
}

function nodeQuadrature(
  { points, triangles }: TriangleMesh,
  area: Float64Array,
  normal: Float64Array
): NodeQuadrature {
  const at: number[] = [];
  const normals: number[] = [];
  const known = new Map<string, number>();
  const rows = Array.from({ length: points.length / 3 }, () => new Map<number, number>());
  for (let t = 0; t < area.length; t++) {
    const n = normal.subarray(3 * t, 3 * t + 3);
    const name = Array.from(n, (x) => Math.round(x * 1e7) + 0).join();
    const corner = [0, 1, 2].map((i) => {
      const node = triangles[3 * t + i];
      const key = `${node}|${name}`;
      let p = known.get(key);
      if (p === undefined) {
        p = at.length / 3;
        known.set(key, p);
        at.push(...points.subarray(3 * node, 3 * node + 3));
        normals.push(...n);
      }
      return p;
    });
    for (let i = 0; i < 3; i++) {
      const row = rows[triangles[3 * t + i]];
      for (let j = 0; j < 3; j++)
        row.set(corner[j], (row.get(corner[j]) ?? 0) + (area[t] * (i === j ? 6 : 1)) / 24);
    }
  }
  const start = new Int32Array(rows.length + 1);
  rows.forEach((row, i) => (start[i + 1] = start[i] + row.size));
  return {
    points: Float64Array.from(at),
    normals: Float64Array.from(normals),
    start,
    point: Int32Array.from(rows.flatMap((row) => [...row.keys()])),
    weight: Float64Array.from(rows.flatMap((row) => [...row.values()]))
  };
}
