import type { Metres } from '../../units.js';
import { gradedLines } from './graded-lines.js';
import { addPanel } from './panel.js';
import { MeshBuilder, type TriangleMesh } from './triangle-mesh.js';

/** Which walls stand below the roof or front, which is always there. */
export interface Walls {
  /** The two walls y = ±width/2. */
  sides: boolean;
  /** The two walls x = ±length/2. */
  ends: boolean;
  /** The wall opposite the front. */
  floor: boolean;
}

/**
 * A quarter of a box or of a folded plate: the front or roof in z = 0 (normal +z), walls going down from it to
 * z = −depth, and perhaps a floor; all normals point outward. Sides that end freely are graded towards the end. With no
 * walls it is a flat rectangle.
 *
 * @param spacing largest distance of neighbouring nodes along a side, for x, y and z
 */
export function boxMesh(
  [length, width, depth]: readonly [Metres, Metres, Metres],
  { sides, ends, floor }: Walls,
  [hx, hy, hz]: readonly [Metres, Metres, Metres]
): TriangleMesh {
  const x = gradedLines(length / 2, hx, !ends);
  const y = gradedLines(width / 2, hy, !sides);
  const z = gradedLines(depth, hz, !floor);
  const builder = new MeshBuilder(Math.max(length, width, depth));
  addPanel(builder, { origin: [0, 0, 0], u: [1, 0, 0], v: [0, 1, 0], alongU: x, alongV: y });
  const down = [0, 0, -1] as const;
  if (sides) addPanel(builder, { origin: [0, width / 2, 0], u: [1, 0, 0], v: down, alongU: x, alongV: z });
  if (ends) addPanel(builder, { origin: [length / 2, 0, 0], u: down, v: [0, 1, 0], alongU: z, alongV: y });
  if (floor) addPanel(builder, { origin: [0, 0, -depth], u: [0, 1, 0], v: [1, 0, 0], alongU: y, alongV: x });
  return builder.mesh(['x', 'y']);
}
