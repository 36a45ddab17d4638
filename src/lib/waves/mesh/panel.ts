import type { MeshBuilder } from './triangle-mesh.js';

export type Vector = readonly [number, number, number];

/** A flat rectangular wall: lines along two directions at right angles; the normal is u × v. */
export interface Panel {
  origin: Vector;
  /** Unit vectors. */
  u: Vector;
  v: Vector;
  /** Distances of the grid lines from the origin, in metres, ascending. */
  alongU: Float64Array;
  alongV: Float64Array;
}

/**
 * Adds a panel of two triangles a cell. All diagonals run the same way, so that inside the panel every node has the same
 * six neighbours, on which the quadrature of `surface.ts` is of fourth order.
 */
export function addPanel(builder: MeshBuilder, { origin, u, v, alongU, alongV }: Panel): void {
  const node = (i: number, j: number) =>
    builder.node(
      origin[0] + alongU[i] * u[0] + alongV[j] * v[0],
      origin[1] + alongU[i] * u[1] + alongV[j] * v[1],
      origin[2] + alongU[i] * u[2] + alongV[j] * v[2]
    );
  for (let i = 0; i + 1 < alongU.length; i++)
    for (let j = 0; j + 1 < alongV.length; j++) {
      const [a, b, c, d] = [node(i, j), node(i + 1, j), node(i + 1, j + 1), node(i, j + 1)];
      builder.triangle(a, b, c);
      builder.triangle(a, c, d);
    }
}
