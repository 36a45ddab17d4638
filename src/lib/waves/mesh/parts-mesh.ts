import { axisLines, type Denser } from './axis-lines.js';
import { addEllipse } from './ellipse-mesh.js';
import { addPanel } from './panel-mesh.js';
import { cutPanels, extent, survivingMirrors, type SurfacePart } from './surface-part.js';
import type { Axis, Mirror, Vector } from './symmetry.js';
import { MeshBuilder, type TriangleMesh } from './triangle-mesh.js';

const AXES: readonly Axis[] = [0, 1, 2];

/** Parts that share their grid, and how far apart its lines are. */
export interface Grid {
  parts: readonly SurfacePart[];
  /** Largest distance of neighbouring nodes along x, y and z; an ellipse takes the lesser of x and y. */
  spacing: Vector;
  denser?: Denser;
}

/**
 * Meshes the parts of a surface, each on a grid of its own that it shares with those it meets; of what is symmetric only the
 * part on the positive side. Lines crowd towards free edges.
 *
 * @param spacing as of a `Grid`
 * @param mirrors planes of symmetry to make use of, all that the parts have unless told; the mesh is the same
 */
export function partsMesh(
  parts: readonly SurfacePart[],
  spacing: Vector,
  mirrors: readonly Mirror[] = survivingMirrors(parts)
): TriangleMesh {
  return gridsMesh([{ parts, spacing }], mirrors);
}

/**
 * The same of several grids.
 *
 * @param grids parts of one meet none of another, and are of other sheets
 */
export function gridsMesh(grids: readonly Grid[], mirrors: readonly Mirror[]): TriangleMesh {
  const all = grids.flatMap(({ parts }) => parts);
  const size = Math.max(...AXES.map((axis) => extent(all, axis)).map(([from, to]) => to - from));
  const builder = new MeshBuilder(size);
  for (const { parts, spacing, denser } of grids) {
    const panels = cutPanels(parts, mirrors);
    const lines = AXES.map((axis) => axisLines(parts, panels, axis, spacing[axis], denser));
    for (const panel of panels) addPanel(builder, panel, lines, mirrors);
    for (const part of parts)
      if (part.shape === 'ellipse') addEllipse(builder, part, Math.min(spacing[0], spacing[1]), mirrors);
  }
  return builder.mesh(mirrors);
}
