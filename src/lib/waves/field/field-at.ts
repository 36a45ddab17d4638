import type { Metres } from '../../units.js';
import type { Surface } from '../mesh/surface.js';
import type { WaveProblem, WaveState } from '../solve/wave-problem.js';
import { raisedAt } from './raised-at.js';
import type { Complex } from '../../numeric/complex.js';

/** A triangle is halved in both directions until it is this many of its longest edges away … */
const FAR = 2;
/** … at most so many times: closer than a few hundredths of an edge to the surface the field is not resolved. */
const DEPTH = 6;

/**
 * The pressure at a point over jωρ·v of one piston, in metres: the double layer ∫ m·∂G/∂n′ dS =
 * ∫ m·n·(x − y)·(1 + jkr)·e^{−jkr}/(4πr³) dS, by the edge midpoints of triangles that are halved where they are near.
 *
 * @param count of the images, the first of them, that are summed: all, or those of the surface itself without its reflections
 * @param point x, y, z in the coordinates of the mesh: the plate or roof is z = 0, its middle the origin; off the surface
 */
export function fieldAt(
  problem: WaveProblem,
  state: WaveState,
  [x, y, z]: readonly [Metres, Metres, Metres],
  piston = 0,
  count = problem.surface.images.length
): Complex {
  const { surface } = problem;
  const { k, jumps } = state;
  const sum = raisedAt(problem, state, [x, y, z], piston);
  const size = sizeOf(surface);
  surface.classes.forEach(({ character }, c) => {
    const m = jumps[piston][c];
    if (!m) return;
    const re = onNodes(surface, c, m.re);
    const im = onNodes(surface, c, m.im);
    surface.images.slice(0, count).forEach(({ sign, shift }, g) => {
      // in place of the image the point is mirrored back
      const at = [sign[0] * (x - shift[0]), sign[1] * (y - shift[1]), sign[2] * (z - shift[2])] as const;
      const part = isFar(size, at) ? farLayer(surface, k, at, re, im) : layer(surface, k, at, re, im);
      sum.re += character[g] * part.re;
      sum.im += character[g] * part.im;
    });
  });
  return sum;
}

/** The unknowns of a class at all nodes, 0 where there is none. */
function onNodes({ mesh, classes }: Surface, c: number, values: Float64Array): Float64Array {
  const all = new Float64Array(mesh.points.length / 3);
  classes[c].nodes.forEach((node, i) => (all[node] = values[i]));
  return all;
}

/** The meshed part in a few numbers. */
interface Size {
  centre: number[];
  radius: Metres;
  longestEdge: Metres;
}

function sizeOf({ mesh: { points, triangles } }: Surface): Size {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < points.length; i++) {
    low[i % 3] = Math.min(low[i % 3], points[i]);
    high[i % 3] = Math.max(high[i % 3], points[i]);
  }
  let longest = 0;
  for (let t = 0; t < triangles.length; t += 3)
    for (let i = 0; i < 3; i++) {
      const [a, b] = [3 * triangles[t + i], 3 * triangles[t + ((i + 1) % 3)]];
      const [x, y, z] = [points[a] - points[b], points[a + 1] - points[b + 1], points[a + 2] - points[b + 2]];
      longest = Math.max(longest, x * x + y * y + z * z);
    }
  return {
    centre: low.map((x, d) => (x + high[d]) / 2),
    radius: Math.hypot(...low.map((x, d) => high[d] - x)) / 2,
    longestEdge: Math.sqrt(longest)
  };
}

/** Whether no triangle is near the point. */
function isFar({ centre, radius, longestEdge }: Size, at: readonly [number, number, number]): boolean {
  const away = Math.hypot(at[0] - centre[0], at[1] - centre[1], at[2] - centre[2]);
  return away - radius > FAR * longestEdge;
}

/** `layer` where no triangle needs to be halved, which is most of all that one listens to. */
function farLayer(
  { mesh: { points, triangles }, normal, area }: Surface,
  k: number,
  [x, y, z]: readonly [number, number, number],
  re: Float64Array,
  im: Float64Array
): Complex {
  const sum: Complex = { re: 0, im: 0 };
  for (let t = 0; t < area.length; t++) {
    const o = 3 * t;
    const first = 3 * triangles[o];
    const height =
      (x - points[first]) * normal[o] +
      (y - points[first + 1]) * normal[o + 1] +
      (z - points[first + 2]) * normal[o + 2];
    if (height === 0) continue;
    // each midpoint has the mean of two corners
    const scale = (height * area[t]) / (2 * 3 * 4 * Math.PI);
    for (let i = 0; i < 3; i++) {
      const own = triangles[o + i];
      const next = triangles[o + (i === 2 ? 0 : i + 1)];
      const dx = x - (points[3 * own] + points[3 * next]) / 2;
      const dy = y - (points[3 * own + 1] + points[3 * next + 1]) / 2;
      const dz = z - (points[3 * own + 2] + points[3 * next + 2]) / 2;
      const r2 = dx * dx + dy * dy + dz * dz;
      const kr = k * Math.sqrt(r2);
      const weight = scale / (r2 * Math.sqrt(r2));
      const cos = Math.cos(kr);
      const sin = Math.sin(kr);
      const gr = weight * (cos + kr * sin);
      const gi = weight * (kr * cos - sin);
      const mr = re[own] + re[next];
      const mi = im[own] + im[next];
      sum.re += gr * mr - gi * mi;
      sum.im += gr * mi + gi * mr;
    }
  }
  return sum;
}

/** Corners and the values there: x, y, z, re, im for each of the three. */
type Piece = Float64Array;

/** The double layer of the meshed part at a point. */
function layer(
  { mesh: { points, triangles }, normal, area }: Surface,
  k: number,
  at: readonly [number, number, number],
  re: Float64Array,
  im: Float64Array
): Complex {
  const sum: Complex = { re: 0, im: 0 };
  const piece: Piece = new Float64Array(15);
  for (let t = 0; t < area.length; t++) {
    for (let i = 0; i < 3; i++) {
      const node = triangles[3 * t + i];
      piece.set(points.subarray(3 * node, 3 * node + 3), 5 * i);
      piece[5 * i + 3] = re[node];
      piece[5 * i + 4] = im[node];
    }
    addPiece(piece, normal.subarray(3 * t, 3 * t + 3), area[t], k, at, DEPTH, sum);
  }
  return sum;
}

function addPiece(
  piece: Piece,
  normal: Float64Array,
  area: number,
  k: number,
  at: readonly [number, number, number],
  depth: number,
  sum: Complex
): void {
  // the height over the plane is the same for all of the triangle
  const height =
    (at[0] - piece[0]) * normal[0] + (at[1] - piece[1]) * normal[1] + (at[2] - piece[2]) * normal[2];
  if (height === 0) return;
  if (depth > 0 && isNear(piece, at)) {
    for (const part of quarters(piece)) addPiece(part, normal, area / 4, k, at, depth - 1, sum);
    return;
  }
  for (let i = 0; i < 15; i += 5) {
    const j = (i + 5) % 15;
    const r = Math.hypot(
      at[0] - (piece[i] + piece[j]) / 2,
      at[1] - (piece[i + 1] + piece[j + 1]) / 2,
      at[2] - (piece[i + 2] + piece[j + 2]) / 2
    );
    const scale = (height * area) / (3 * 4 * Math.PI * r ** 3);
    const cos = Math.cos(k * r);
    const sin = Math.sin(k * r);
    const gr = scale * (cos + k * r * sin);
    const gi = scale * (k * r * cos - sin);
    const mr = (piece[i + 3] + piece[j + 3]) / 2;
    const mi = (piece[i + 4] + piece[j + 4]) / 2;
    sum.re += gr * mr - gi * mi;
    sum.im += gr * mi + gi * mr;
  }
}

function isNear(piece: Piece, at: readonly [number, number, number]): boolean {
  let longest = 0;
  let nearest = Infinity;
  for (let i = 0; i < 15; i += 5) {
    const j = (i + 5) % 15;
    longest = Math.max(longest, distance(piece, i, piece[j], piece[j + 1], piece[j + 2]));
    nearest = Math.min(nearest, distance(piece, i, at[0], at[1], at[2]));
  }
  return nearest < FAR * longest;
}

function distance(piece: Piece, i: number, x: number, y: number, z: number): number {
  return Math.hypot(piece[i] - x, piece[i + 1] - y, piece[i + 2] - z);
}

/** The triangle cut at the middles of its edges. */
function quarters(piece: Piece): Piece[] {
  const [a, b, c] = [0, 5, 10].map((i) => piece.subarray(i, i + 5));
  const between = (p: Float64Array, q: Float64Array) => p.map((x, d) => (x + q[d]) / 2);
  const [ab, bc, ca] = [between(a, b), between(b, c), between(c, a)];
  return [
    [a, ab, ca],
    [ab, b, bc],
    [ca, bc, c],
    [ab, bc, ca]
  ].map((corners) => Float64Array.from(corners.flatMap((corner) => [...corner])));
}
