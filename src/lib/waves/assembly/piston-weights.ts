import { outlineArea, outlineLength, outlineWidth } from '../../acoustics/outline.js';
import type { Metres } from '../../units.js';
import type { Piston } from '../mesh/piston.js';
import type { Surface } from '../mesh/surface.js';

/** Corners of the polygon that stands for an ellipse; its area is the ellipse's. */
const CORNERS = 96;
/** Nearer than this to the plane of a cone is in it. */
const IN_PLANE: Metres = 1e-9;

/**
 * q_i = ∫ v·φ_i dS of a cone that moves with 1 m/s, split over the symmetry classes: per class one number an unknown, or
 * null where the cone does not excite the class. The cone need not follow the mesh: every triangle is clipped with its
 * outline and the linear hats are integrated exactly; all is scaled so that the cone's area is that of its outline.
 *
 * @throws RangeError if no part of the cone lies on the surface
 */
export function pistonWeights(surface: Surface, piston: Piston): (Float64Array | null)[] {
  const { mesh, images, copies, classes, normal } = surface;
  const { points, triangles } = mesh;
  const outline = polygon(piston);
  const nodes = points.length / 3;
  const own = images.slice(0, copies);
  const perImage = own.map(() => new Float64Array(nodes));
  let area = 0;
  for (let t = 0; t < triangles.length / 3; t++) {
    if (Math.abs(normal[3 * t + 2]) < 0.999999) continue;
    const corners = [0, 1, 2].map((i) => 3 * triangles[3 * t + i]);
    own.forEach(({ sign, shift }, g) => {
      const place = (p: number, d: number) => sign[d] * points[p + d] + shift[d];
      if (corners.some((p) => Math.abs(place(p, 2) - piston.middle[2]) > IN_PLANE)) return;
      const triangle = corners.map((p): Point => [place(p, 0), place(p, 1)]);
      // a sheet that lies upon the first, of which the front looks up, is moved with it, but counts no area
      const first = !mesh.sheets?.[triangles[3 * t]];
      const facing = first ? 1 : Math.sign(normal[3 * t + 2]);
      for (const [i, share] of hatIntegrals(triangle, outline).entries()) {
        perImage[g][triangles[3 * t + i]] += facing * share;
        if (first) area += share;
      }
    });
  }
  if (!(area > 0)) throw new RangeError('the cone does not lie on the surface');
  const scale = outlineArea(piston.outline) / area;
  return classes.map(({ character, nodes: kept }) => {
    const q = Float64Array.from(kept, (node) =>
      perImage.reduce((sum, weights, g) => sum + character[g] * weights[node], 0)
    );
    const most = q.reduce((a, b) => Math.max(a, Math.abs(b)), 0);
    // what symmetric clipping leaves by rounding is no source
    if (most * kept.length < 1e-9 * area) return null;
    return q.map((x) => (x * scale) / copies);
  });
}

type Point = readonly [number, number];

/** Anticlockwise corners. */
function polygon({ outline, middle: [x, y] }: Piston): Point[] {
  const a = outlineLength(outline) / 2;
  const b = outlineWidth(outline) / 2;
  if (outline.shape === 'rectangle')
    return [
      [x - a, y - b],
      [x + a, y - b],
      [x + a, y + b],
      [x - a, y + b]
    ];
  const step = (2 * Math.PI) / CORNERS;
  const grow = Math.sqrt(step / Math.sin(step));
  return Array.from({ length: CORNERS }, (_, i): Point => {
    const angle = (i + 0.5) * step;
    return [x + grow * a * Math.cos(angle), y + grow * b * Math.sin(angle)];
  });
}

/** ∫ φ_i over the part of a triangle that lies within a convex polygon, for its three hats. */
function hatIntegrals(triangle: Point[], outline: Point[]): [number, number, number] {
  const [a, b, c] = triangle;
  const twice = cross(a, b, c);
  let part: Point[] = twice > 0 ? [a, b, c] : [a, c, b];
  for (let i = 0; i < outline.length && part.length > 0; i++)
    part = clip(part, outline[i], outline[(i + 1) % outline.length]);
  const sum: [number, number, number] = [0, 0, 0];
  for (let i = 1; i + 1 < part.length; i++) {
    const [p, q, r] = [part[0], part[i], part[i + 1]];
    const area = cross(p, q, r) / 2;
    const middle: Point = [(p[0] + q[0] + r[0]) / 3, (p[1] + q[1] + r[1]) / 3];
    sum[0] += (area * cross(middle, b, c)) / twice;
    sum[1] += (area * cross(a, middle, c)) / twice;
    sum[2] += (area * cross(a, b, middle)) / twice;
  }
  return sum;
}

/** The part of a polygon on the left of the line from a to b (I. E. Sutherland and G. W. Hodgman, Commun. ACM 17 (1974) 32). */
function clip(part: Point[], a: Point, b: Point): Point[] {
  const out: Point[] = [];
  for (let i = 0; i < part.length; i++) {
    const [p, q] = [part[i], part[(i + 1) % part.length]];
    const [sp, sq] = [cross(a, b, p), cross(a, b, q)];
    if (sp >= 0) out.push(p);
    if (sp * sq < 0) {
      const share = sp / (sp - sq);
      out.push([p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1])]);
    }
  }
  return out;
}

/** Twice the signed area of a triangle. */
function cross(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}
