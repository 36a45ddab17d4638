import type { Metres } from '../../units.js';
import { gradedLines } from './graded-lines.js';
import type { Ellipse } from './surface-part.js';
import type { Mirror } from './symmetry.js';
import type { MeshBuilder } from './triangle-mesh.js';

/**
 * Adds a flat ellipse, or what of it lies on the positive side of planes of symmetry, quarter by quarter: rings that crowd
 * towards the free rim, each divided so that its pieces are about as long as `spacing`. The rim is a polygon of the
 * ellipse's area.
 *
 * @param spacing largest distance between neighbours, above 0
 */
export function addEllipse(
  builder: MeshBuilder,
  { semiAxes }: Ellipse,
  spacing: Metres,
  mirrors: readonly Mirror[]
): void {
  const sides = ([0, 1] as const).map((axis) =>
    mirrors.some((plane) => plane.axis === axis) ? [1] : [1, -1]
  );
  for (const sx of sides[0])
    for (const sy of sides[1]) addQuarter(builder, [sx * semiAxes[0], sy * semiAxes[1]], spacing);
}

/** @param semiAxes negative for a quarter on the other side */
function addQuarter(builder: MeshBuilder, [a, b]: readonly [Metres, Metres], spacing: Metres): void {
  const longer = Math.max(Math.abs(a), Math.abs(b));
  const radii = gradedLines(1, spacing / longer, true);
  const add = (p: number, q: number, r: number) =>
    a * b > 0 ? builder.triangle(p, q, r) : builder.triangle(p, r, q);
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
    zip(add, ring, next);
    ring = next;
  }
}

/** Triangles between two rings that start and end on the same rays, taken in the order of the angle. */
function zip(add: (p: number, q: number, r: number) => void, inner: number[], outer: number[]): void {
  const [m, n] = [inner.length - 1, outer.length - 1];
  let [i, j] = [0, 0];
  while (i < m || j < n) {
    // the step that leaves the shorter cross edge; ties go to the outer ring
    const innerNext = i < m ? (i + 1) / m : 2;
    const outerNext = j < n ? (j + 1) / n : 2;
    if (outerNext <= innerNext || i === m) {
      add(inner[i], outer[j], outer[j + 1]);
      j++;
    } else {
      add(inner[i], outer[j], inner[i + 1]);
      i++;
    }
  }
}
