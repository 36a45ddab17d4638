import type { Metres } from '../../units.js';
import { gradedLines } from './graded-lines.js';
import { MeshBuilder, type TriangleMesh } from './triangle-mesh.js';

/**
 * A quarter of a flat elliptic plate with semi-axes a along x and b along y, normal +z: rings that crowd towards the
 * free rim, each divided so that its pieces are about as long as `spacing`. The rim is a polygon of the ellipse's area.
 *
 * @param spacing largest distance between neighbours, above 0
 */
export function ellipseMesh(a: Metres, b: Metres, spacing: Metres): TriangleMesh {
  const longer = Math.max(a, b);
  const radii = gradedLines(1, spacing / longer, true);
  const builder = new MeshBuilder(longer);
  let ring = [builder.node(0, 0, 0)];
  for (let i = 1; i < radii.length; i++) {
    const pieces = Math.max(2, Math.round((Math.PI / 2) * radii[i] * (longer / spacing)));
    const step = Math.PI / 2 / pieces;
    const radius = i + 1 === radii.length ? Math.sqrt(step / Math.sin(step)) : radii[i];
    const next = Array.from({ length: pieces + 1 }, (_, j) =>
      builder.node(
        j === pieces ? 0 : a * radius * Math.cos(j * step),
        j === 0 ? 0 : b * radius * Math.sin(j * step),
        0
      )
    );
    zip(builder, ring, next);
    ring = next;
  }
  return builder.mesh(['x', 'y']);
}

/** Triangles between two rings that start and end on the same rays, taken in the order of the angle. */
function zip(builder: MeshBuilder, inner: number[], outer: number[]): void {
  const [m, n] = [inner.length - 1, outer.length - 1];
  let [i, j] = [0, 0];
  while (i < m || j < n) {
    // the step that leaves the shorter cross edge; ties go to the outer ring
    const innerNext = i < m ? (i + 1) / m : 2;
    const outerNext = j < n ? (j + 1) / n : 2;
    if (outerNext <= innerNext || i === m) {
      builder.triangle(inner[i], outer[j], outer[j + 1]);
      j++;
    } else {
      builder.triangle(inner[i], outer[j], inner[i + 1]);
      i++;
    }
  }
}
