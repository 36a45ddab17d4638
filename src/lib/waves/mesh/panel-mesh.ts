import { normalAxis, type Panel } from './surface-part.js';
import type { Axis, Mirror } from './symmetry.js';
import type { MeshBuilder } from './triangle-mesh.js';

/** The two axes u and v along a panel whose front looks along +x, +y, +z; with x and y taken upward and z downward, u × v is its normal. */
const ALONG: readonly (readonly [Axis, Axis])[] = [
  [2, 1],
  [0, 2],
  [0, 1]
];

/**
 * Adds a panel of two triangles a cell. Diagonals run outward from the axes, so that between them every node has the same six
 * neighbours, on which the quadrature of `surface.ts` is of fourth order, and a mirrored panel is the mirror image.
 *
 * @param lines grid lines on every axis, which may go on beyond the panel
 * @param mirrors the planes beyond which a panel goes on
 */
export function addPanel(
  builder: MeshBuilder,
  panel: Panel,
  lines: readonly Float64Array[],
  mirrors: readonly Mirror[] = []
): void {
  const normal = normalAxis(panel);
  const [u, v] = panel.facing > 0 ? ALONG[normal] : [ALONG[normal][1], ALONG[normal][0]];
  const [alongU, alongV] = [u, v].map((axis) => within(lines[axis], panel, axis));
  const node = (i: number, j: number) => {
    const at: [number, number, number] = [...panel.low];
    at[u] = alongU[i];
    at[v] = alongV[j];
    return builder.node(...at, panel.sheet);
  };
  if (panel.rim) {
    const inner = (axis: Axis, x: number) =>
      mirrors.some((plane) => plane.axis === axis && plane.at === x) ||
      (x > panel.low[axis] && x < panel.high[axis]);
    alongU.forEach((x, i) =>
      alongV.forEach((y, j) => {
        if (inner(u, x) && inner(v, y)) builder.idle(node(i, j));
      })
    );
  }
  const outward = (along: Float64Array, i: number) => Math.abs(along[i + 1]) > Math.abs(along[i]);
  for (let i = 0; i + 1 < alongU.length; i++)
    for (let j = 0; j + 1 < alongV.length; j++) {
      const [a, b, c, d] = [node(i, j), node(i + 1, j), node(i + 1, j + 1), node(i, j + 1)];
      if (outward(alongU, i) === outward(alongV, j)) {
        builder.triangle(a, b, c);
        builder.triangle(a, c, d);
      } else {
        builder.triangle(a, b, d);
        builder.triangle(b, c, d);
      }
    }
}

/** The lines of a panel: from its least coordinate upward, on z from its greatest downward. */
function within(lines: Float64Array, { low, high, laps }: Panel, axis: Axis): Float64Array {
  const beyond = laps && axis === 2 ? lines.find((x) => x > high[2]) : undefined;
  const own = lines.filter((x) => x >= low[axis] && x <= (beyond ?? high[axis]));
  return axis === 2 ? own.reverse() : own;
}
